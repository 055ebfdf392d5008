// For everybody: by keyboard, by ear, with large letters, by glove.
import assert from "node:assert/strict";
import { SCREENS, SIZES, THEMES, axe, openDemo, setTheme, show } from "../harness.mjs";

export const tests = {
  async "axe finds nothing on any screen in any theme"({ visit }) {
    const { page } = await visit();
    assert.deepEqual(await axe(page), [], "first run");
    await openDemo(page);
    for (const theme of THEMES) {
      await setTheme(page, theme);
      for (const [screen, hash] of Object.entries(SCREENS)) {
        await show(page, hash);
        assert.deepEqual(await axe(page), [], `${screen}, ${theme}`);
      }
    }
  },

  async "the keyboard alone gets to a site, and the focus follows"({ visit }) {
    const { page } = await visit({ viewport: SIZES.desktop });
    await openDemo(page);
    await page.reload();
    await page.locator("html[data-opened]").waitFor({ state: "attached" });
    await page.keyboard.press("Tab");
    assert.equal(await page.evaluate(() => document.activeElement.className), "skip");
    await page.keyboard.press("Enter");
    await page.waitForFunction(() => document.activeElement?.id === "main");
    for (let presses = 0; presses < 8; presses += 1) {
      await page.keyboard.press("Tab");
      if (await page.evaluate(() => document.activeElement.getAttribute("href")?.startsWith("#/site/"))) break;
    }
    await page.keyboard.press("Enter");
    await page.waitForURL(/#\/site\//);
    await page.waitForFunction(() => document.activeElement?.id === "main");
  },

  async "nothing that is touched is smaller than 48 px, and nothing runs out of the page with letters twice as large"({ visit }) {
    const { page } = await visit();
    await openDemo(page);
    for (const [screen, hash] of Object.entries(SCREENS)) {
      await show(page, hash);
      const low = await page.evaluate(() =>
        [...document.querySelectorAll("header a, nav.bar a, main button, main select, main summary, .sites a")]
          .filter((one) => one.checkVisibility() && one.getBoundingClientRect().height < 47.9)
          .map((one) => one.outerHTML),
      );
      assert.deepEqual(low, [], screen);
      const wide = await page.evaluate(() => {
        document.documentElement.style.fontSize = "200%";
        const wide = document.documentElement.scrollWidth - innerWidth;
        document.documentElement.style.fontSize = "";
        return wide;
      });
      assert.ok(wide <= 1, `${screen} is ${wide} px too wide`);
    }
  },
};
