// Practice: a whole lesson by touch and by keyboard, drills, progress, and a coach's afternoon. What is right is what the command says.
import assert from "node:assert/strict";
import { readFile, rm } from "node:fs/promises";
import { join } from "node:path";
import { SIZES, THEMES, axe, command, folder, offlineReady, setTheme, show, texts, until } from "../harness.mjs";

const HALF_INCH = 12_700_000;

/** The key of a line of 25 ft as the command has it, in half inches. */
async function keyOf(level, number) {
  const { text } = await command("practice", "line", "--level", String(level), "--number", String(number), "--length", "25 ft", "--key", "--json");
  const line = JSON.parse(text);
  return line.key.map((row) => ({ species: row.species, start: row.start_nm / HALF_INCH, stop: row.stop_nm / HALF_INCH }));
}

const inches = (halves) => (halves % 2 ? `${(halves - 1) / 2} 1/2` : `${halves / 2}`);

/** Chooses a line of 25 ft and begins. */
async function begin(page, { level, number, way = "set edges on the picture" }) {
  await show(page, "#/practice/lesson");
  await page.getByRole("radio", { name: new RegExp(`^${level}:`) }).check();
  await page.getByLabel("Length of the line").selectOption("1");
  await page.getByLabel(/^Number of the line/).fill(String(number));
  await page.getByRole("radio", { name: way }).check();
  await page.getByRole("button", { name: "Begin", exact: true }).click();
  await page.locator(".walk").waitFor();
}

/** Touches the picture at a place in half inches: 5 px each. */
async function touch(page, halves) {
  await page.locator(".walk").evaluate((walk, x) => { walk.scrollLeft = x - 120; }, halves * 5);
  await page.locator(".track").tap({ position: { x: halves * 5, y: 60 } });
}

/** Types rows into the grid: Enter from cell to cell. */
async function typeRows(page, rows) {
  await page.locator(".grid input").first().focus();
  for (const row of rows) {
    for (const cell of [row.species, inches(row.start), inches(row.stop)]) {
      await page.keyboard.type(cell);
      await page.keyboard.press("Enter");
    }
  }
}

export const tests = {
  async "a lesson is read by touch on a phone without a network, and the careful reader is all right"({ visit, stop }) {
    const { context, page } = await visit({ hasTouch: true, isMobile: true });
    await offlineReady(page);
    await stop();
    await context.setOffline(true);
    await show(page, "#/practice");
    await page.getByLabel("Your name").fill("Ada");
    await begin(page, { level: 1, number: 3 });
    const key = await keyOf(1, 3);
    for (const row of key) {
      await page.locator(".species").getByRole("button", { name: row.species, exact: true }).tap();
      await touch(page, row.start);
      await page.getByRole("button", { name: "Start here" }).tap();
      await touch(page, row.stop);
      await page.getByRole("button", { name: "Stop here" }).tap();
    }
    assert.equal(await page.locator(".set li").count(), key.length);
    // killed in the middle, nothing is lost
    const last = new RegExp(`stop\\W+${key.at(-1).stop}\\D`);
    await until(async () => last.test(await texts(page, "tautline-practice")));
    await page.reload();
    await page.locator(".set li").nth(key.length - 1).waitFor();
    await page.getByRole("button", { name: "Hand it in" }).tap();
    await page.getByText(`All ${key.length} intercepts are right.`).waitFor();
    // 20 + 10 + 10 of the example's 50: the arithmetic was not handed in
    await page.getByText(/Marks 40\.0 of 50\.0/).waitFor();
    await show(page, "#/practice/progress");
    await page.getByText("One lesson.").waitFor();
    await page.getByText(`${key.length} of ${key.length}`).waitFor();
    // the command reads what the app hands out
    const download = page.waitForEvent("download");
    await page.getByRole("button", { name: "Hand out as a file" }).tap();
    const { text } = await command("practice", "progress", await (await download).path(), "--json");
    const [learner] = JSON.parse(text).learners;
    assert.deepEqual([learner.name, learner.lessons.length, learner.lessons[0].line, learner.lessons[0].right], ["Ada", 1, "1-3", key.length]);
    assert.match(await texts(page, "tautline-practice"), /Ada/);
    assert.doesNotMatch(await texts(page, "tautline"), /Ada/);
    await context.setOffline(false);
  },

  async "a lesson is read by keyboard alone, and an edge that is off is told with its reason"({ visit }) {
    const { page } = await visit({ viewport: SIZES.desktop });
    await begin(page, { level: 1, number: 3 });
    const key = await keyOf(1, 3);
    const species = ["FOUR", "SHAD", "WINT", "GREA"];
    await page.locator(".walk").focus();
    let at = 0;
    const walk = async (to) => {
      for (; to - at >= 12; at += 12) await page.keyboard.press("Shift+ArrowRight");
      for (; at < to; at += 1) await page.keyboard.press("ArrowRight");
      for (; at > to; at -= 1) await page.keyboard.press("ArrowLeft");
    };
    for (const [number, row] of key.entries()) {
      await page.keyboard.press(String(species.indexOf(row.species) + 1));
      await walk(row.start);
      await page.keyboard.press("Enter");
      // the last stop is set three inches too far
      await walk(number === key.length - 1 ? row.stop + 6 : row.stop);
      await page.keyboard.press("Enter");
    }
    await page.getByRole("button", { name: "Hand it in" }).focus();
    await page.keyboard.press("Enter");
    await page.getByText(`${key.length - 1} of ${key.length} intercepts are right.`).waitFor();
    await page.getByText(/its stop was read at/).waitFor();
    // the year's own tolerance, typed in, makes it right
    await page.getByText("Bands and marks").click();
    await page.getByLabel(/How far an edge may lie off/).fill("3");
    await page.getByText(`All ${key.length} intercepts are right.`).waitFor();
  },

  async "an edge is moved with the mouse by its handle, and the step taken back"({ visit }) {
    const { page } = await visit({ viewport: SIZES.desktop });
    await begin(page, { level: 1, number: 3 });
    const track = page.locator(".track");
    await track.click({ position: { x: 100, y: 60 } });
    await page.getByRole("button", { name: "Start here" }).click();
    await track.click({ position: { x: 200, y: 60 } });
    await page.getByRole("button", { name: "Stop here" }).click();
    const row = page.locator(".set li span");
    const before = await row.innerText();
    await page.getByRole("button", { name: "Move stop" }).click();
    const handle = await page.locator(".over .handle").boundingBox();
    await page.mouse.move(handle.x + 26, handle.y + 20);
    await page.mouse.down();
    await page.mouse.move(handle.x + 76, handle.y + 20, { steps: 5 });
    await page.mouse.up();
    await page.getByRole("button", { name: "Put it here" }).click();
    // 50 px are ten half inches: from 1'8" to 2'1"
    assert.match(before, /FOUR .*10.* to .*1.*8/);
    assert.match(await row.innerText(), /2.*1/);
    await page.getByRole("button", { name: "Take back" }).click();
    assert.equal(await row.innerText(), before);
  },

  async "a lesson is typed as on a sheet, with a slip told beside its row"({ visit }) {
    const { page } = await visit({ viewport: SIZES.desktop });
    await begin(page, { level: 1, number: 3, way: "type starts and stops, as on a sheet" });
    const key = await keyOf(1, 3);
    await typeRows(page, key);
    await page.locator(".grid input").nth(2).fill("1o");
    await page.getByText("“1o” is no length").waitFor();
    await page.locator(".grid input").nth(2).fill(inches(key[0].stop));
    await page.getByRole("button", { name: "Hand it in" }).click();
    await page.getByText(`All ${key.length} intercepts are right.`).waitFor();
  },

  async "drills say what is right and show the way line by line"({ visit }) {
    const { page } = await visit();
    await show(page, "#/practice/arithmetic");
    await page.getByRole("button", { name: "Check" }).click();
    await page.getByText("Not this time.").waitFor();
    await page.getByRole("button", { name: "Show the solution" }).click();
    await page.getByRole("heading", { name: "Solution" }).waitFor();
    await show(page, "#/practice/in-or-out");
    await page.getByRole("button", { name: "Show the solution" }).click();
    const answers = await page.locator(".answers li").allInnerTexts();
    for (const [at, answer] of answers.entries()) {
      await page.locator(".plants > div").nth(at).getByRole("button", { name: answer, exact: true }).click();
    }
    await page.getByRole("button", { name: "Check" }).click();
    await page.getByText("12 of 12 are right.").waitFor();
    await show(page, "#/practice/sight");
    const asked = await page.getByText(/A canopy edge stands/).innerText();
    const [, height, degrees] = /(\d+)\D+above the tape, and the eye leans (\d+)/.exec(asked);
    await page.getByLabel("Your answer").fill(String(Math.round(height * Math.tan((degrees * Math.PI) / 180))));
    await page.getByRole("button", { name: "Check" }).click();
    await page.getByText("Right.", { exact: true }).waitFor();
  },

  async "a coach types a class, sees experts' spread, places and what cost points, and takes the list away"({ visit }) {
    const { page } = await visit({ viewport: SIZES.desktop });
    await show(page, "#/practice/class");
    await page.locator(".laid summary").click();
    await page.getByLabel("Length of the line").selectOption("1");
    await page.getByText("Bands and marks").click();
    await page.getByLabel(/Marks for cover by/).fill("0.1=10, 2=5");
    // two experts read a real line: 60 and 62 of 300 in, 20.0 % and 20.7 %
    await page.getByRole("button", { name: /^experts' \(/ }).click();
    const expert = async (name, stop, first) => {
      if (!first) await page.getByRole("button", { name: "Next sheet" }).click();
      await page.getByLabel("Name", { exact: true }).fill(name);
      await page.getByLabel("Line", { exact: true }).fill("L1");
      await typeRows(page, [{ species: "FOUR", start: 40, stop }]);
    };
    await expert("Expert one", 160, true);
    await expert("Expert two", 164, false);
    await page.getByRole("button", { name: /^learners' \(/ }).click();
    const key = await keyOf(1, 3);
    const learner = async (name, line, rows, percent, first) => {
      if (!first) await page.getByRole("button", { name: "Next sheet" }).click();
      await page.getByLabel("Name", { exact: true }).fill(name);
      await page.getByLabel("Group or team").fill("Rim");
      await page.getByLabel("Line", { exact: true }).fill(line);
      await page.getByLabel(/^Per cent of the line/).fill(percent);
      await typeRows(page, rows);
    };
    await learner("Ada", "1-3", key, "", true);
    await learner("Bea", "1-3", key.map((row) => ({ ...row, stop: row.stop + 6 })), "", false);
    await learner("Bea", "L1", [{ species: "FOUR", start: 40, stop: 160 }], "20.0", false);
    await until(async () => /L1[^{}]*20\.0[^{}]*\[\{[^}]*80/.test(await texts(page, "tautline-practice")));
    await page.reload();
    await page.getByRole("button", { name: "Ada, line 1-3" }).waitFor();
    await page.getByRole("button", { name: "Mark them" }).click();
    await page.getByText(/the key's cover is 20\.3.%; those who read it lie 0\.7 percentage points apart/).waitFor();
    await page.getByText(/a band of 0\.1 percentage points is narrower than the 0\.7/).waitFor();
    // Bea has two lines: 10 + 10 + 0 or 5 of one, and 20 + 10 + 5 + 10 of the other; Ada one: 20 + 10 + 10
    const places = page.getByRole("table", { name: "Class" }).or(page.locator("table", { hasText: "line by line" })).first();
    await places.waitFor();
    assert.match(await places.innerText(), /1\s+Bea[\s\S]*2\s+Ada/);
    assert.deepEqual(await axe(page), []);
    await page.getByRole("button", { name: "Take the class list away" }).click();
    await page.getByRole("button", { name: "Yes, take it all away" }).click();
    await page.getByText("The class list is gone").waitFor();
    await until(async () => !/Ada|Expert/.test(await texts(page, "tautline-practice")));
    assert.equal(await page.getByRole("button", { name: /Ada/ }).count(), 0);
  },

  async "a protest is written down, decided, handed out as a table, and goes with the class list"({ visit }) {
    const { page } = await visit();
    await show(page, "#/practice/class");
    await page.getByRole("button", { name: "One more protest" }).click();
    const protest = page.locator(".protests > li");
    const said = [["raised by", "Rim"], ["line", "1-3"], ["row", "4"], ["about", "litter, not canopy"], ["why", "it hangs free"], ["decided by", "Coach"]];
    for (const [label, text] of said) await protest.getByLabel(label, { exact: true }).fill(text);
    await protest.locator("select").selectOption("upheld");
    assert.deepEqual(await axe(page), []);
    await until(async () => /it hangs free/.test(await texts(page, "tautline-practice")));
    await page.reload();
    await protest.getByLabel("about", { exact: true }).waitFor();
    assert.equal(await protest.getByLabel("about", { exact: true }).inputValue(), "litter, not canopy");
    assert.equal(await protest.locator("select").inputValue(), "upheld");
    const download = page.waitForEvent("download");
    await page.getByRole("button", { name: "Hand out the protests as a table" }).click();
    const table = await readFile(await (await download).path(), "utf8");
    assert.match(table, /raised by.*\n.*Rim.*1-3.*4.*"?litter, not canopy"?.*upheld.*it hangs free.*Coach/);
    await page.getByRole("button", { name: "Take the class list away" }).click();
    await page.getByRole("button", { name: "Yes, take it all away" }).click();
    await page.getByText("The class list is gone").waitFor();
    await until(async () => !/Rim/.test(await texts(page, "tautline-practice")));
    assert.equal(await protest.count(), 0);
  },

  async "paper for a class is the command's own page, the keys last, and alone when it is printed"({ visit }) {
    const { page } = await visit({ viewport: SIZES.desktop });
    await show(page, "#/practice/paper");
    await page.getByRole("radio", { name: /^2:/ }).check();
    await page.getByLabel("How many lines").fill("2");
    await page.getByRole("button", { name: "Draw them" }).click();
    for (const part of ["Sheet for line 2-1", "Tally", "Protests", "Where lines start", "Keys: keep apart", "Key of line 2-2"]) {
      await page.getByText(part, { exact: true }).first().waitFor({ state: "attached" });
    }
    const download = page.waitForEvent("download");
    await page.getByRole("button", { name: "As a file" }).click();
    const given = await readFile(await (await download).path(), "utf8");
    const own = await folder();
    const file = join(own, "set.html");
    await command("practice", "set", "--level", "2", "--lines", "2", "--page", file);
    assert.equal(given, await readFile(file, "utf8"));
    await rm(own, { recursive: true });
    await page.emulateMedia({ media: "print" });
    assert.equal(await page.getByRole("button", { name: "Draw them" }).isVisible(), false);
  },

  async "axe finds nothing on any screen of practice in any theme, and nothing is too small or too wide"({ visit }) {
    const { page } = await visit();
    for (const theme of THEMES) {
      await setTheme(page, theme);
      for (const screen of ["", "/lesson", "/arithmetic", "/line-starts", "/in-or-out", "/sight", "/progress", "/paper", "/class"]) {
        await show(page, `#/practice${screen}`);
        await page.locator("main h1").first().waitFor();
        assert.deepEqual(await axe(page), [], `${screen}, ${theme}`);
        const low = await page.evaluate(() =>
          [...document.querySelectorAll("main button, main select, main summary, main a, main .option")]
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
      await begin(page, { level: 5, number: 2 });
      assert.deepEqual(await axe(page), [], `reading, ${theme}`);
      await page.getByRole("button", { name: "Hand it in" }).click();
      await page.getByRole("heading", { name: "Sheets beside the key" }).waitFor();
      assert.deepEqual(await axe(page), [], `marked, ${theme}`);
      await page.getByRole("button", { name: "Choose another line" }).click();
    }
  },
};
