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
};
