// At the desk: language, letters, search.
import assert from "node:assert/strict";
import { SCREENS, SIZES, axe, openDemo, show } from "../harness.mjs";

/** What runs out of the page or is cut off, where nothing may. */
const lost = (page) =>
  page.evaluate(() => {
    const wide = document.documentElement.scrollWidth - innerWidth;
    const cut = [...document.querySelectorAll("body *")].filter((one) => {
      const style = getComputedStyle(one);
      if (!one.checkVisibility() || style.overflowX === "auto" || style.overflowX === "scroll") return false;
      // a box that holds words and hides what stands over its edge, or words wider than what holds them
      const words = [...one.childNodes].some((node) => node.nodeType === 3 && node.textContent.trim());
      return words && (one.scrollWidth > one.clientWidth + 1) && one.clientWidth > 0 && style.display !== "inline";
    });
    const over = [...document.querySelectorAll("nav.bar a")].some((one, at, all) => {
      const next = all[at + 1]?.getBoundingClientRect();
      const own = one.getBoundingClientRect();
      return next && next.top === own.top && own.right > next.left + 1;
    });
    return { wide: wide > 1 ? wide : 0, cut: cut.map((one) => one.outerHTML.slice(0, 200)), over };
  });
const NOTHING = { wide: 0, cut: [], over: false };

export const tests = {
  async "a browser that asks for Spanish is answered in it"({ visit }) {
    const { page } = await visit({ locale: "es-MX" });
    await page.locator("html[lang='es']").waitFor({ state: "attached" });
    assert.deepEqual(await axe(page), []);
  },

  async "with letters twice as large nothing is cut off, on a phone and on half a phone"({ visit }) {
    const { page } = await visit();
    await openDemo(page);
    const look = async (how) => {
      for (const [screen, hash] of Object.entries(SCREENS)) {
        await show(page, hash);
        assert.deepEqual(await lost(page), NOTHING, `${screen}, ${how}`);
      }
    };
    await look("as usual");
    await show(page, "#/notebook");
    await page.getByRole("radio", { name: "200 %" }).check();
    assert.equal(await page.evaluate(() => getComputedStyle(document.documentElement).fontSize), "32px");
    await look("letters at 200 %");
    await show(page, "#/notebook");
    await page.getByRole("radio", { name: "as the browser has them" }).check();
    // a browser's own zoom is a narrower screen: 320 px is what WCAG 2.2, 1.4.10 asks for
    await page.setViewportSize({ width: 320, height: 480 });
    await look("320 px wide");
  },

  async "everything is found, and each find opens"({ visit }) {
    const { page } = await visit();
    await openDemo(page);
    await show(page, "#/search");
    const field = page.getByRole("searchbox");
    await field.fill("hollow");
    await page.getByRole("link", { name: "Hollow Flat (invented)", exact: true }).waitFor();
    assert.deepEqual(await axe(page), []);
    await field.fill("fourwing");
    await page.getByRole("heading", { name: "Plants" }).waitFor();
    await page.getByRole("heading", { name: "readings of lines" }).waitFor();
    await field.fill("nothing is called that");
    await page.getByText("Nothing in the notebook holds all of these words.").waitFor();
    await field.fill("hollow");
    await page.getByRole("link", { name: "Hollow Flat (invented)", exact: true }).click();
    await page.waitForURL(/#\/site\//);
  },

};
