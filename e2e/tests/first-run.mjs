// From nothing to a verdict.
import assert from "node:assert/strict";
import { openDemo } from "../harness.mjs";

export const tests = {
  async "a first run offers the demo or an empty notebook, and the demo has a verdict"({ visit }) {
    const { page } = await visit();
    await page.getByRole("link", { name: "Begin with my own files" }).waitFor();
    await openDemo(page);
    const site = page.getByRole("link", { name: /Hollow Flat \(invented\)/ }).first();
    assert.match(await site.innerText(), /\d\s%/);
    await site.click();
    await page.waitForFunction(() => /Hollow Flat/.test(document.title));
  },

  async "the first screen speaks before the words of the other rooms have come"({ visit }) {
    const { context, page } = await visit({ serviceWorkers: "block" });
    await openDemo(page);
    await context.route(/\/words-[a-z]+-rooms/, () => {});    // asked for, never answered
    await page.reload();
    await page.getByRole("link", { name: /Hollow Flat \(invented\)/ }).first().waitFor();
    const said = await page.locator("body").innerText();
    assert.match(said, /where something waits/);
    assert.deepEqual(said.match(/\b(?:app|desk|field|read)-[a-z-]+|\bnot-(?:met|yet-shown)/g), null);
  },
};
