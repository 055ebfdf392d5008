// From a boundary and a pilot to a packet, in one sitting; by touch and at a desk, by keyboard, by ear.
import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { SIZES, THEMES, axe, openDemo, setTheme, show, texts, until } from "../harness.mjs";

const SITE = "Hollow Flat (invented)";
const demo = (name) => readFile(new URL(`../../crates/demo/src/${name}`, import.meta.url));
const boundary = async () => ({ name: "boundary.geojson", mimeType: "application/geo+json", buffer: await demo("boundary.geojson") });
const roads = async () => ({ name: "roads.kml", mimeType: "application/vnd.google-earth.kml+xml", buffer: await demo("roads.kml") });

/** The address of each step. */
export const STEPS = { aim: "#/plan", lines: "#/plan/lines", where: "#/plan/where", packet: "#/plan/packet" };

/** A goal, a number, a layout: what stands on the screens once a person has gone through them. */
export async function planned(page) {
  await show(page, STEPS.aim);
  await page.getByLabel("Site", { exact: true }).fill(SITE);
  await page.getByLabel("Per cent of the ground", { exact: true }).fill("15");
  await page.getByLabel(/Smallest change worth seeing/).fill("4");
  await page.getByLabel("Where the number comes from").fill("agreed on the spot, invented");
  await page.getByText(/lines: verdict on at least 15/).waitFor();
  await page.getByRole("button", { name: "Keep the goal" }).click();
  await page.getByText("The goal stands in the notebook").waitFor();
  await page.getByRole("link", { name: "How many lines" }).last().click();
  await page.getByText(/Pilot on Hollow Flat/).first().waitFor();
  await page.getByRole("button", { name: /^Take \d+ lines: verdict/ }).click();
  const lines = Number(await page.getByLabel("Lines to lay out").inputValue());
  assert.ok(lines > 2 && lines < 200, `${lines} lines`);
  assert.match(await page.getByLabel("Why so many").inputValue(), /verdict on at least 15/);
  await page.getByRole("link", { name: "Where they go" }).last().click();
  await page.getByLabel("Boundary from a file").setInputFiles(await boundary());
  await page.getByLabel("Keep out: a file").setInputFiles(await roads());
  await page.getByLabel(/Length of each line/).fill("100 ft");
  await page.locator(".map svg").waitFor();
  return lines;
}

/** Keeps the layout that is drawn. */
export async function keepLayout(page) {
  // names of their own: lines of the demo were read under 1, 2, 3 …
  await page.locator("summary", { hasText: "Edge, distance, seed, names" }).click();
  await page.getByLabel(/What the names of lines begin with/).fill("27-");
  await page.locator(".map svg text", { hasText: "27-1" }).first().waitFor();
  await page.getByRole("button", { name: "Keep this layout" }).click();
  await page.locator(".paper h1").waitFor();
}

/** The text of a file that a button hands out. */
async function handedOut(page, button) {
  const [download] = await Promise.all([page.waitForEvent("download"), page.getByRole("button", { name: button, exact: true }).click()]);
  return readFile(await download.path(), "utf8");
}

async function oneSitting(visit, size) {
  const { page } = await visit({ viewport: SIZES[size], acceptDownloads: true });
  await openDemo(page);
  const lines = await planned(page);
  assert.deepEqual(await axe(page), [], "where");
  await keepLayout(page);
  // the page of the packet, a sheet for each line and a spare one
  const packet = await handedOut(page, "The packet as a page");
  assert.equal(packet.match(/<section class="sheet"/g).length, lines + 1);
  assert.ok(!/https?:\/\/(?!www\.w3\.org)/.test(packet), "it needs no other file and no network");
  const gpx = await handedOut(page, "For a receiver (GPX)");
  assert.match(gpx, /<name>27-1 0<\/name>/);
  const table = await handedOut(page, "Lines (CSV)");
  assert.equal(table.trim().split("\n").length, lines + 1);
  const map = JSON.parse(await handedOut(page, "For a map (GeoJSON)"));
  assert.ok(map.features.length > lines);
  // what was laid out is there to be read
  await show(page, "#/read");
  await page.locator("summary", { hasText: "have not been read this year" }).click();
  await page.getByRole("button", { name: /27-1\b/ }).first().waitFor();
}

export const tests = {
  async "a goal, a number, a layout and a packet in one sitting, on a phone"({ visit }) {
    await oneSitting(visit, "phone");
  },

  async "a goal, a number, a layout and a packet in one sitting, at a desk"({ visit }) {
    await oneSitting(visit, "desktop");
  },

  async "what was typed into a plan is there after the app was closed, and begins anew when asked"({ visit }) {
    const { page } = await visit();
    await openDemo(page);
    await show(page, STEPS.aim);
    await page.getByLabel("Site", { exact: true }).fill(SITE);
    await page.getByLabel("Per cent of the ground", { exact: true }).fill("12.5");
    await until(async () => /12\.5/.test(await texts(page, "tautline")));
    await page.reload();
    await page.locator("html[data-opened]").waitFor({ state: "attached" });
    await page.getByLabel("Per cent of the ground", { exact: true }).waitFor();
    const typed = () => page.getByLabel("Per cent of the ground", { exact: true }).inputValue();
    await until(async () => (await typed()) === "12.5");
    await page.getByRole("button", { name: "Begin anew" }).click();
    await until(async () => (await typed()) === "");
  },

  async "a number of lines is answered while a slider moves"({ visit }) {
    const { page } = await visit();
    await openDemo(page);
    await show(page, STEPS.lines);
    await page.getByLabel("as I describe it").check();
    // 7 % spread, ± 5 % at 95 % and 90 % chance: 14 lines (Kupper and Hafner 1989; docs/plan.md)
    await page.getByLabel(/^Spread of lines/).fill("7");
    await page.getByLabel(/^An interval that reaches/).fill("5");
    await page.getByLabel("How sure").selectOption("95");
    await page.getByLabel(/^Chance that the plan succeeds/).fill("90");
    await page.getByRole("button", { name: /^Take 14 lines: interval/ }).waitFor();
    // the page below says the same as the buttons, each time anew
    await page.locator(".sheet").getByText("14 lines: interval").waitFor();
    await page.getByLabel(/^Chance that the plan succeeds/).focus();
    await page.keyboard.press("ArrowLeft");
    await page.getByText("Chance that the plan succeeds: 89").waitFor();
  },

  async "corners are set down by touch and by keyboard, and a map is come near to by its keys"({ visit }) {
    const { page } = await visit();
    await openDemo(page);
    await show(page, STEPS.where);
    await page.locator("summary", { hasText: "Set corners by hand" }).click();
    await page.getByRole("button", { name: "Add ground" }).click();
    await page.getByLabel(/Middle of the plane/).fill("42.3010, -113.7000");
    const plane = page.locator(".plane svg");
    await plane.waitFor();
    const box = await plane.boundingBox();
    for (const [x, y] of [[0.1, 0.1], [0.9, 0.1], [0.9, 0.9]]) await plane.click({ position: { x: box.width * x, y: box.height * y } });
    const corners = page.getByLabel("Corners, one a line");
    assert.equal((await corners.inputValue()).trim().split("\n").length, 3);
    await corners.press("End");
    await page.keyboard.press("Control+End");
    await page.keyboard.type("42.2974, -113.7049");
    await page.getByLabel("Site", { exact: true }).fill("Rim Draw (invented)");
    await page.getByLabel("Lines to lay out").fill("4");
    const map = page.locator(".map svg");
    await map.waitFor();
    // a square of 800 m is 64 ha, less what a corner typed by hand moves it
    await page.getByText(/6\d(\.\d+)? ha, 4 of 4 placed/).waitFor();
    const whole = await map.getAttribute("viewBox");
    await page.locator(".map .near").focus();
    await page.keyboard.press("+");
    const near = await map.getAttribute("viewBox");
    assert.ok(Number(near.split(" ")[2]) < Number(whole.split(" ")[2]));
    await page.keyboard.press("ArrowRight");
    assert.notEqual(await map.getAttribute("viewBox"), near);
    await page.keyboard.press("0");
    assert.deepEqual((await map.getAttribute("viewBox")).split(" ").map(Number), whole.split(" ").map(Number));
  },

  async "a goal is changed under another name, and taken back; its history stays"({ visit }) {
    const { page } = await visit({ viewport: SIZES.phone });
    await openDemo(page);
    await show(page, STEPS.aim);
    await page.getByLabel("Site", { exact: true }).fill(SITE);
    await page.getByLabel("Per cent of the ground", { exact: true }).fill("15");
    await page.getByLabel("A name for the goal").fill("browse");
    await page.getByRole("button", { name: "Keep the goal" }).click();
    const goals = page.locator(".goals");
    await goals.getByText(/browse · .*at least 15/).waitFor();
    // what was typed since is replaced by what stands in the notebook
    await page.getByLabel("Per cent of the ground", { exact: true }).fill("40");
    await goals.getByRole("button", { name: "Change the goal “browse”" }).click();
    assert.equal(await page.getByLabel("Per cent of the ground", { exact: true }).inputValue(), "15");
    await page.getByLabel("Per cent of the ground", { exact: true }).fill("12.5");
    await page.getByLabel("A name for the goal").fill("spring browse");
    await page.getByLabel("Why it changes").fill("agreed anew, invented");
    assert.deepEqual(await axe(page), [], "changing");
    await page.getByRole("button", { name: "Keep the goal" }).click();
    await goals.getByText(/spring browse · .*at least 12.5/).waitFor();
    assert.equal(await goals.locator("li").count(), 1, "it is the same goal under another name");
    await goals.getByRole("button", { name: "Take back the goal “spring browse”" }).click();
    await goals.getByLabel(/It will count no more/).fill("invented");
    assert.deepEqual(await axe(page), [], "taking back");
    await goals.getByRole("button", { name: "Take it back" }).click();
    await goals.getByText("No goal stands in the notebook for this site yet.").waitFor();
  },

  async "spokes of plots, lines from a baseline, and strata that share lines by spread"({ visit }) {
    const { page } = await visit();
    await openDemo(page);
    await show(page, STEPS.where);
    await page.getByLabel("Boundary from a file").setInputFiles(await boundary());
    await page.getByLabel("Lines to lay out").fill("6");
    await page.locator(".map svg").waitFor();
    await page.getByLabel("What is laid out").selectOption("spokes");
    await page.getByLabel("Lines of each plot").fill("3");
    await page.locator(".map svg text", { hasText: "1-3" }).first().waitFor();
    await page.getByLabel("What is laid out").selectOption("baseline");
    await page.getByText(/Where the baseline begins.*isn't understood/).waitFor();
    await page.getByLabel(/^Where the baseline begins/).fill("42.3030, -113.7000");
    await page.getByLabel("Its true bearing in degrees").fill("90");
    await page.getByLabel(/^Its length, such as/).fill("400 m");
    await page.locator(".map svg text", { hasText: /^6$/ }).waitFor();
    assert.deepEqual(await axe(page), [], "baseline");
    await page.getByLabel("What is laid out").selectOption("line");
    await page.getByLabel("Strata share the lines").selectOption("spread");
    await page.getByText(/Say on the step before by how much lines vary in each stratum: bench, swale/).waitFor();
    await show(page, STEPS.lines);
    await page.locator("summary", { hasText: "Lines of each stratum" }).click();
    await page.getByLabel(/^Spread of lines in bench/).fill("2");
    await page.getByLabel(/^Spread of lines in swale/).fill("12");
    await show(page, STEPS.where);
    // by area the swale, 45 ha of 286, has two of six; by area and spread 240 x 2 and 45 x 12 are about even
    await page.getByText(/swale: [\d.]+ ha, 3 of 3 placed/).waitFor();
  },

  async "a file that can't be read is said, and what was handed in stays"({ visit }) {
    const { page } = await visit();
    await openDemo(page);
    await show(page, STEPS.where);
    await page.getByLabel("Boundary from a file").setInputFiles(await boundary());
    await page.getByText("boundary.geojson: ground").waitFor();
    // the first bytes of every SQLite file (sqlite.org, Database File Format, 1.3)
    const database = { name: "strata.gpkg", mimeType: "application/octet-stream", buffer: Buffer.from("SQLite format 3\0") };
    await page.getByLabel("Boundary from a file").setInputFiles(database);
    await page.getByText(/A GeoPackage is read by the command/).waitFor();
    await page.getByText("boundary.geojson: ground").waitFor();
  },

  async "a line that can't be read gives its place to the next in reserve, and says why"({ visit }) {
    const { page } = await visit();
    await openDemo(page);
    await planned(page);
    await keepLayout(page);
    await page.locator("summary", { hasText: "A line can't be read" }).click();
    await page.locator(".replace select").first().selectOption({ label: "Line 27-1" });
    await page.locator(".replace select").last().selectOption("no-permission");
    await page.getByRole("button", { name: "Put the next one in its place" }).click();
    await page.getByText(/27-R\d+ takes its place/).first().waitFor();
    await show(page, "#/read");
    await page.locator("summary", { hasText: "have not been read this year" }).click();
    await page.getByRole("button", { name: /27-R1\b/ }).first().waitFor();
    assert.equal(await page.getByRole("button", { name: /27-1\b/ }).count(), 0);
  },

  async "axe finds nothing on any step in any theme, and all of it fits a phone with letters twice as large"({ visit }) {
    const { page } = await visit();
    await openDemo(page);
    await planned(page);
    await keepLayout(page);
    for (const theme of THEMES) {
      await setTheme(page, theme);
      for (const [step, hash] of Object.entries(STEPS)) {
        await show(page, hash);
        await page.locator(".planning .choices").first().waitFor();
        await page.locator("details").evaluateAll((all) => all.forEach((one) => (one.open = true)));
        await page.waitForTimeout(600);
        assert.deepEqual(await axe(page), [], `${step}, ${theme}`);
      }
    }
    for (const [step, hash] of Object.entries(STEPS)) {
      await show(page, hash);
      await page.waitForTimeout(600);
      await page.locator("details").evaluateAll((all) => all.forEach((one) => (one.open = true)));
      const low = await page.evaluate(() =>
        [...document.querySelectorAll("main button, main select, main summary, main input:not([type=file], [type=radio], [type=checkbox]), main .option, .steps a, label.pick")]
          .filter((one) => one.checkVisibility() && one.getBoundingClientRect().height < 47.9)
          .map((one) => one.outerHTML),
      );
      assert.deepEqual(low, [], step);
      const wide = await page.evaluate(() => {
        document.documentElement.style.fontSize = "200%";
        const wide = document.documentElement.scrollWidth - innerWidth;
        document.documentElement.style.fontSize = "";
        return wide;
      });
      assert.ok(wide <= 1, `${step} is ${wide} px too wide`);
    }
  },
};
