// Pictures of every screen, in each size and theme, into a folder that git ignores: for looking at.
import { mkdir } from "node:fs/promises";
import { SCREENS, SIZES, THEMES, beginLine, browser, closeLine, intercept, number, openDemo, serve, setTheme, show, visitor } from "./harness.mjs";
import { STEPS, keepLayout, planned } from "./tests/plan.mjs";

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

// what if, a number opened, a protocol, Spanish, and letters twice as large
for (const [size, viewport] of Object.entries(SIZES)) {
  await page.setViewportSize(viewport);
  await show(page, SCREENS.site);
  await page.getByText("What if", { exact: true }).click();
  await page.getByRole("textbox", { name: "Gap rule" }).fill("6 in");
  await page.waitForTimeout(300);
  await page.screenshot({ path: new URL(`what-if-${size}-sunlight.png`, out).pathname });
  await page.locator("details.chains > summary").click();
  await page.locator("details.chains .chain > li > details > summary").first().click();
  await page.locator("details.chains").screenshot({ path: new URL(`chain-${size}-sunlight.png`, out).pathname });
  await show(page, SCREENS.lists);
  await page.locator(".hits a").first().click();
  await page.locator("form.rules").waitFor();
  await picture(`protocol-${size}-sunlight`);
  await show(page, SCREENS.notebook);
  await page.getByRole("radio", { name: "200" }).check();
  for (const screen of ["sites", "notebook", "history"]) {
    await show(page, SCREENS[screen]);
    await page.screenshot({ path: new URL(`twice-${screen}-${size}-sunlight.png`, out).pathname });
  }
  await show(page, SCREENS.notebook);
  await page.getByRole("radio", { name: "as the browser has them" }).check();
  const speak = async (language) => {
    await page.getByLabel(/^(Language|Idioma)/).selectOption(language);
    // another language is another page
    await page.locator(`html[lang="${language}"]`).waitFor({ state: "attached" });
    await page.getByLabel(/^(Language|Idioma)/).waitFor();
  };
  await speak("es");
  await picture(`spanish-${size}-sunlight`);
  await speak("en");
}

// the screen on which a line is read, in its states; a screen of its own height, so without what lies below
const shown = (name) => page.screenshot({ path: new URL(`${name}.png`, out).pathname });
await page.setViewportSize(SIZES.phone);
await beginLine(page, { line: "91", reader: "Ana", recorder: "Ben" });
const address = page.url();
await shown("line-empty-phone-sunlight");
await intercept(page, "GREA", "10", "20");
await intercept(page, "GREA", "21 1/2", "30");
await intercept(page, "SHAD", "41", "58 1/4");
await intercept(page, "WINT", "90", "80");
await page.locator(".ready").getByRole("button", { name: "BUDS", exact: true }).click();
await number(page, "101");
await page.locator(".numbers .digit").getByText("1", { exact: true }).click();
const panels = { rules: "Rules", more: "More …", close: "Close …", find: "others …" };
for (const theme of THEMES) {
  await setTheme(page, theme);
  await page.goto(address);
  await page.locator(".reading").waitFor();
  for (const [size, viewport] of Object.entries(SIZES)) {
    await page.setViewportSize(viewport);
    await page.waitForTimeout(300);
    await shown(`line-${size}-${theme}`);
    for (const [panel, name] of Object.entries(panels)) {
      await page.getByRole("button", { name }).click();
      await page.waitForTimeout(200);
      await shown(`line-${panel}-${size}-${theme}`);
      await page.getByRole("button", { name: "Back to the keys" }).click();
    }
    await page.locator(".rows .row").first().click();
    await shown(`line-row-${size}-${theme}`);
    await page.getByRole("button", { name: "Back to the keys" }).click();
  }
}
await number(page, "20");
await closeLine(page);
for (const [size, viewport] of Object.entries(SIZES)) {
  await page.setViewportSize(viewport);
  await picture(`line-closed-${size}-sunlight`);
}

// practice: every screen, a line under way, and one beside its key
const PRACTICE = ["", "lesson", "arithmetic", "line-starts", "in-or-out", "sight", "progress", "paper", "class"];
const beginPractice = async (number) => {
  await show(page, "#/practice/lesson");
  await page.getByRole("radio", { name: /^4:/ }).check();
  await page.getByLabel(/^Number of the line/).fill(String(number));
  await page.getByRole("button", { name: "Begin", exact: true }).click();
  for (const [start, stop] of [[60, 160], [200, 290]]) {
    for (const [x, name] of [[start, "Start here"], [stop, "Stop here"]]) {
      await page.locator(".track").click({ position: { x, y: 60 } });
      await page.getByRole("button", { name }).click();
    }
  }
};
for (const theme of THEMES) {
  await setTheme(page, theme);
  for (const [size, viewport] of Object.entries(SIZES)) {
    await page.setViewportSize(viewport);
    await beginPractice(7);
    await page.locator(".track").click({ position: { x: 320, y: 60 } });
    await picture(`practice-reading-${size}-${theme}`);
    await page.getByRole("button", { name: "Hand it in" }).click();
    await page.getByRole("heading", { name: "Sheets beside the key" }).waitFor();
    await picture(`practice-marked-${size}-${theme}`);
    await page.getByRole("button", { name: "Choose another line" }).click();
    for (const screen of PRACTICE) {
      await show(page, `#/practice/${screen}`);
      await page.waitForTimeout(300);
      await picture(`practice-${screen || "home"}-${size}-${theme}`);
    }
  }
}

// a plan, step by step, with what a person has typed by then
await page.setViewportSize(SIZES.phone);
await planned(page);
await keepLayout(page);
for (const theme of THEMES) {
  await setTheme(page, theme);
  for (const [size, viewport] of Object.entries(SIZES)) {
    await page.setViewportSize(viewport);
    for (const [step, hash] of Object.entries(STEPS)) {
      await show(page, hash);
      await page.waitForTimeout(1200);
      await picture(`plan-${step}-${size}-${theme}`);
    }
  }
}

// a photo over the last one, without a camera, and a line read blind
await page.goto(new URL("#/read", page.url()).href);
await context.grantPermissions(["camera"]);
const shot = `#/photo/${encodeURIComponent("Hollow Flat (invented)")}/B1/start`;
await show(page, shot);
await page.getByRole("button", { name: "Take it", exact: true }).waitFor();
await page.waitForTimeout(1500);
await page.getByRole("button", { name: "Take it", exact: true }).click();
await page.getByAltText("The photo as it would be kept").waitFor();
await picture("photo-taken-phone-sunlight");
await page.getByRole("button", { name: "Keep it" }).click();
await page.getByText("The photo is kept on this device.").waitFor();
await page.locator("#read-form").getByLabel("A second reading").check();
await beginLine(page, { line: "91", reader: "Ben", recorder: "Ana" });
for (const theme of THEMES) {
  await setTheme(page, theme);
  for (const [size, viewport] of Object.entries(SIZES)) {
    await page.setViewportSize(viewport);
    await show(page, shot);
    await page.locator(".over img").waitFor();
    await page.waitForTimeout(500);
    await picture(`photo-over-${size}-${theme}`);
    await show(page, "#/read");
    await picture(`read-blind-${size}-${theme}`);
    await show(page, SCREENS.site);
    await page.waitForTimeout(300);
    await shown(`site-blind-${size}-${theme}`);
    await show(page, "#/figures");
    await shown(`figures-${size}-${theme}`);
  }
}
await context.close();
await own.close();
await server.stop();
console.log(out.pathname);
