// Sites over the years, and readers side by side: the same sentences as the command's, and what is done about them.
import assert from "node:assert/strict";
import { readFile, rm } from "node:fs/promises";
import { join } from "node:path";
import { SIZES, axe, command, folder, openDemo, show } from "../harness.mjs";

const SITE = "Hollow Flat (invented)";
const FOLLOW = `#/follow/${encodeURIComponent(SITE)}`;

const plain = (text) => text.replaceAll("\u00a0", " ").replace(/\s+/g, " ");

/** What the command says of the demo. */
async function said(...words) {
  const own = await folder();
  const demo = join(own, "demo");
  await command("demo", demo);
  const { text } = await command(words[0], ...(words[0] === "agree" && words[1] === "sources" ? ["sources"] : []), demo, ...words.slice(words[1] === "sources" ? 2 : 1));
  await rm(own, { recursive: true, force: true });
  return plain(text);
}

/** Waits for a sentence on the screen, in the report's part too. */
const reads = (page, text) => page.getByText(text).filter({ visible: true }).first().waitFor();

/** What the reports on the screen say: they stand in trees of their own. */
const inSheets = async (page) =>
  plain((await page.locator(".sheet").evaluateAll((all) => all.map((one) => (one.shadowRoot ?? one).textContent))).join(" "));

const done = (page) => page.waitForFunction(() => document.querySelector(".works")?.textContent === "");

/**
 * Four lines of 25 m with six plants; Bea sees each edge 5 cm further out: 6 × 0.1 m of 25 m are 2.4 points more on each line. By hand.
 */
function calibration() {
  const rows = ["site,line,line length,date,reader,pass,species,start (m),stop (m)"];
  for (const [line, from] of [[1, 0], [2, 0.7], [3, 1.1], [4, 0.4]])
    for (let plant = 1; plant <= 6; plant += 1)
      for (const [reader, pass, wider] of [["Ada", 1, 0], ["Bea", 2, 0.05]]) {
        const at = from + 3 * plant;
        const edges = [at - wider, at + 0.4 + wider].map((edge) => edge.toFixed(2));
        rows.push(`Calibration Flat (invented),${line},25 m,2026-06-0${line},${reader},${pass},SHAD,${edges}`);
      }
  return { name: "calibration.csv", mimeType: "text/csv", buffer: Buffer.from(`${rows.join("\n")}\n`) };
}

async function takeIn(page, file) {
  await show(page, "#/take-in");
  await page.locator('input[type="file"]').setInputFiles(file);
  await page.getByRole("button", { name: "Keep it" }).click();
  await page.getByRole("link", { name: /Calibration Flat/ }).waitFor();
}

export const tests = {
  async "a change is seen: how much, where on the tape, what the design could have seen, as the command says it"({ visit }) {
    const { page } = await visit();
    await openDemo(page);
    const printed = await said("change", "--from", "2022", "--to", "2026", "--matters", "5 %");
    await show(page, FOLLOW);
    await reads(page, "between 2024 and 2026");
    await page.getByLabel("Earlier visit").selectOption("2022");
    await page.getByText("Ask more closely").click();
    await page.getByLabel("The change that matters").fill("5");
    await reads(page, "It is less than the 5.0 points that matter.");
    for (const sentence of [
      /Canopy cover rose by [\d.]+ points between 2022 and 2026\./,
      /In percentage points of cover the change lies between \S+ and \S+, with 90 % confidence\./,
      /Lines that vary like these show a change of [\d.]+ points with a chance of 80 %/,
      /Reading the same lines again was worth [\d.]+ times as many new ones\./,
    ]) {
      const [own] = sentence.exec(printed) ?? assert.fail(`${sentence} is not in\n${printed}`);
      const screen = await inSheets(page);
      assert.ok(screen.includes(own), `“${own}” is not on the screen`);
    }
    const picture = page.getByRole("img", { name: "Canopy along each line at both visits" }).filter({ visible: true });
    await picture.first().waitFor();
    await page.getByText("all lines", { exact: true }).waitFor();
    await page.getByLabel("lines of the same name are new ones").check();
    await reads(page, /to be as sure, new ones take [\d.]+ times as many/);
    assert.deepEqual(await axe(page), []);
  },

  async "a trend, the page as a file, and all sites in a row"({ visit }) {
    const { page } = await visit();
    await openDemo(page);
    await show(page, FOLLOW);
    await page.getByLabel("the trend over all visits").check();
    await reads(page, "3 visits are too few to tell a trend from chance");
    assert.deepEqual(await axe(page), []);
    const [file] = await Promise.all([page.waitForEvent("download"), page.getByRole("button", { name: "The page as a file" }).click()]);
    const text = await readFile(await file.path(), "utf8");
    assert.ok(text.startsWith("<!DOCTYPE html>") && text.includes("3 visits are too few"));
    await page.getByRole("link", { name: "All sites over the years" }).click();
    await page.getByRole("link", { name: /Hollow Flat.*3 visits are too few/ }).waitFor();
    await page.getByLabel("what changed between two visits").check();
    await page.getByRole("link", { name: /Hollow Flat.*rose by .* between 2024 and 2026/ }).waitFor();
    await page.getByLabel("Find a site").fill("nowhere");
    await page.getByRole("link", { name: /Hollow Flat/ }).waitFor({ state: "hidden" });
    assert.deepEqual(await axe(page), []);
  },

  async "two readers of one line become advice"({ visit }) {
    const { page } = await visit();
    await openDemo(page);
    const printed = await said("agree");
    await show(page, "#/agree");
    await reads(page, "On the one line that both read");
    const [advice] = /reader B sees each edge about [\d.]+ (?:cm|in|ft) further out\./.exec(printed);
    assert.ok((await inSheets(page)).toLowerCase().includes(advice.toLowerCase()), advice);
    await page.getByLabel("Set beside").selectOption("reader B");
    await reads(page, /reader A sees each edge about .* further in/i);
    assert.deepEqual(await axe(page), []);
  },

  async "a calibration is judged by the office's tolerance, logged once, and its certificate shown"({ visit }) {
    const { page } = await visit({ viewport: SIZES.desktop });
    await openDemo(page);
    await takeIn(page, calibration());
    await show(page, "#/agree");
    await page.getByLabel("Where and when").selectOption({ label: "Calibration Flat (invented) 2026" });
    await reads(page, "On the 4 lines that both read, Bea has 2.4 points more canopy than Ada on average.");
    await page.getByRole("button", { name: "Write it into the log" }).click();
    await reads(page, "A calibration is judged by your office’s tolerance");
    await page.getByLabel("Your office’s tolerance").fill("3 %");
    await reads(page, "Ready by your tolerance of 3.0 points: 4 of 4 lines lie within it.");
    await page.getByLabel("Judged by").fill("Coach");
    await page.getByRole("button", { name: "Write it into the log" }).click();
    await reads(page, "One calibration is in the log.");
    await page.getByRole("button", { name: "Write it into the log" }).click();
    await reads(page, "Nothing new for the log.");
    await page.getByRole("link", { name: "Open the log" }).click();
    await page.getByRole("cell", { name: "4 of 4" }).waitFor();
    await reads(page, "Passed on 2026-06-04: on 4 of 4 lines the covers lie within 3.0 points of each other; nine of ten are wanted.");
    await reads(page, "Judged by Coach");
    // a span of one day is long over, and without one nobody is due who passed
    const bea = page.locator(".reminders li", { hasText: "Bea" });
    assert.match(await bea.getAttribute("class"), /in-time/);
    await page.getByLabel("Days that a calibration lasts").fill("1");
    await page.locator(".reminders li.due", { hasText: "Bea" }).waitFor();
    assert.deepEqual(await axe(page), []);
    await page.reload();
    await page.locator(".reminders li.due", { hasText: "Bea" }).waitFor();
    assert.equal(await page.getByLabel("Days that a calibration lasts").inputValue(), "1");
  },

  async "what to buy next is said, by the hour where costs are given"({ visit }) {
    const { page } = await visit();
    await openDemo(page);
    const printed = await said("agree", "sources", "--walk", "10", "--lay", "5", "--read", "0.5");
    await show(page, "#/agree/sources");
    await reads(page, "What takes most of it away at once: one more line.");
    await page.getByText("What things cost you").click();
    for (const [label, minutes] of [["To walk", "10"], ["To lay", "5"], ["To read one metre", "0.5"]]) await page.getByLabel(label).fill(minutes);
    const [own] = /What takes most of it away for its hours: [^.]+\./.exec(printed);
    await reads(page, own);
    await page.getByLabel("To walk").fill("ten");
    await reads(page, "Minutes as a number");
    assert.deepEqual(await axe(page), []);
  },

  async "years, answers and the next screen are reached by keyboard alone"({ visit }) {
    const { page } = await visit({ viewport: SIZES.desktop });
    await openDemo(page);
    await show(page, FOLLOW);
    await done(page);
    const earlier = page.getByLabel("Earlier visit");
    await page.locator("#main").focus();
    for (let presses = 0; presses < 12 && !(await earlier.evaluate((one) => one === document.activeElement)); presses += 1) {
      await page.keyboard.press("Tab");
    }
    await page.keyboard.press("ArrowUp");
    await reads(page, "between 2022 and 2026");
    const onward = page.getByRole("link", { name: "Readers side by side" });
    for (let presses = 0; presses < 60 && !(await onward.evaluate((one) => one === document.activeElement)); presses += 1) {
      await page.keyboard.press("Tab");
    }
    await page.keyboard.press("Enter");
    await page.waitForURL(/#\/agree$/);
    await page.waitForFunction(() => document.activeElement?.id === "main");
  },
};
