// Pictures of every screen, in each size and theme, into a folder that git ignores: for looking at.
import { mkdir } from "node:fs/promises";
import { SCREENS, SIZES, THEMES, browser, openDemo, serve, setTheme, show, visitor } from "./harness.mjs";

const out = new URL("pictures/", import.meta.url);
await mkdir(out, { recursive: true });
const own = await browser();
const server = await serve();
const { context, page } = await visitor(own, server.origin);
const picture = (name) => page.screenshot({ path: new URL(`${name}.png`, out).pathname, fullPage: true });
for (const [size, viewport] of Object.entries(SIZES)) {
  await page.setViewportSize(viewport);
  await picture(`first-run-${size}-light`);
}
await openDemo(page);
for (const theme of THEMES) {
  await setTheme(page, theme);
  for (const [size, viewport] of Object.entries(SIZES)) {
    await page.setViewportSize(viewport);
    for (const [screen, hash] of Object.entries(SCREENS)) {
      await show(page, hash);
      await page.waitForTimeout(300);
      await picture(`${screen.replace(" ", "-")}-${size}-${theme}`);
    }
  }
}
await context.close();
await own.close();
await server.stop();
console.log(out.pathname);
