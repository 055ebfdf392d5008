// The browser's figures are the command's: the same files into both, the same figures out of both, byte for byte.
import assert from "node:assert/strict";
import { readFile, readdir, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { SIZES, axe, command, commandIn, folder, show } from "../harness.mjs";
import { GOALS, PLANTS, readings } from "../readings.mjs";

/** What the app says of these files, all at once taken in, as it hands its figures out. */
async function inTheBrowser(page, at, names) {
  await show(page, "#/take-in");
  await page.locator('main input[type="file"]').setInputFiles(names.map((name) => join(at, name)));
  await page.getByRole("button", { name: "Keep it" }).click({ timeout: 120_000 });
  await page.locator(".sites li").first().waitFor({ timeout: 120_000 });
  await show(page, "#/figures");
  const button = page.getByRole("button", { name: "Figures as JSON" });
  const [given] = await Promise.all([page.waitForEvent("download", { timeout: 120_000 }), button.click()]);
  return readFile(await given.path(), "utf8");
}

async function alike(visit, at, names) {
  const { page } = await visit({ viewport: SIZES.desktop });
  const browser = await inTheBrowser(page, at, names);
  const { text, status } = await commandIn(at, "assess", "--json", ...names);
  assert.ok(status === 0 || status === 1, `the command ended with ${status}`);
  const [own, other] = [JSON.parse(text), JSON.parse(browser)];
  // part by part first, so that a failure says where; then every byte, which every bit of a number is in
  assert.deepEqual(other.assessments, own.assessments);
  const figures = (all) => all.slice(0, all.lastIndexOf('\n  "findings": ['));
  assert.ok(figures(text).length > 10_000);
  assert.ok(figures(browser) === figures(text), "the same numbers, written otherwise");
  // what was found on reading stands by file in the one, by site in the other
  const sorted = (findings) => findings.map((one) => JSON.stringify(one)).sort();
  assert.deepEqual(sorted(other.findings), sorted(own.findings));
  return { own, page };
}

export const tests = {
  async "the browser's figures of the demo are the command's, bit for bit"({ visit }) {
    const at = await folder();
    await command("demo", join(at, "demo"));
    const names = (await readdir(join(at, "demo"), { withFileTypes: true })).filter((one) => one.isFile() && !one.name.endsWith(".txt")).map((one) => one.name).sort();
    const { own, page } = await alike(visit, join(at, "demo"), names);
    assert.ok(own.assessments.length >= 4 && own.assessments.every((one) => one.figures.length > 0));
    assert.deepEqual(await axe(page), []);
  },

  async "the browser's figures of a thousand random readings are the command's, bit for bit"({ visit }) {
    const at = await folder();
    const files = [...readings({ sites: 50, lines: 20, seed: 20261127 }), PLANTS, GOALS];
    for (const file of files) await writeFile(join(at, file.name), file.text);
    const { own } = await alike(visit, at, files.map((file) => file.name).sort());
    const lines = own.assessments.reduce((sum, one) => sum + one.lines.length, 0);
    assert.equal(own.assessments.length, 50);
    assert.equal(lines, 1000);
  },
};
