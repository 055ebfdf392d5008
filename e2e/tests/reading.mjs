// Reading a line: by touch without a network, killed and opened again, at a desk by the keyboard alone.
import assert from "node:assert/strict";
import { SIZES, THEMES, axe, beginLine, closeLine, intercept, kept, number, offlineReady, openDemo, setTheme } from "../harness.mjs";

/** The tab dies as it does when a phone needs the room; what it had is gone but for the disk. */
async function kill(page) {
  const context = page.context();
  const devtools = await context.newCDPSession(page);
  const crashed = page.waitForEvent("crash");
  devtools.send("Page.crash").catch(() => {});
  await crashed;
  const address = page.url();
  await page.close();
  const again = await context.newPage();
  again.setDefaultTimeout(60_000);
  await again.goto(address);
  await again.locator("html[data-opened]").waitFor({ state: "attached" });
  return again;
}

const rows = (page) => page.locator(".rows .row").evaluateAll((rows) => rows.map((row) => row.innerText.replace(/\s+/g, " ").trim()));

export const tests = {
  async "three lines are read by touch on a phone without a network, and what they come to is said"({ visit, stop }) {
    const { context, page } = await visit({ hasTouch: true, isMobile: true });
    await openDemo(page);
    await offlineReady(page);
    await stop();
    await context.setOffline(true);
    await page.reload();
    await page.locator("html[data-opened]").waitFor({ state: "attached" });
    for (const line of ["91", "92", "93"]) {
      await beginLine(page, { site: "Rim Draw (invented)", line, length: "50 ft" });
      await intercept(page, "GREA", "12 1/2", "42 1/2");
      await intercept(page, "SHAD", "100", "130");
      assert.deepEqual(await rows(page), ["GREA 12 1/2 –42 1/2", "SHAD 100 –130"]);
      await closeLine(page);
      // 30 in and 30 in of 600 in: by hand
      await page.getByText(/This line: cover 10\.0\s%/).waitFor();
    }
    const said = await page.locator("main").innerText();
    assert.match(said, /The site so far, \d+ lines: cover/);
    await context.setOffline(false);
  },

  async "killed in mid-number, a line opens again in mid-number"({ visit }) {
    const { page } = await visit({ hasTouch: true });
    await openDemo(page);
    await beginLine(page, { line: "91" });
    await intercept(page, "GREA", "10", "20 1/2");
    await page.locator(".ready").getByRole("button", { name: "SHAD", exact: true }).click();
    await number(page, "31");
    await page.locator(".numbers .digit").getByText("4", { exact: true }).click();
    await kept(page);
    const again = await kill(page);
    await again.locator(".expected").waitFor();
    assert.match(await again.locator(".expected").innerText(), /SHAD from 31 stops at\s+4/);
    await number(again, "4 1/4");
    assert.deepEqual(await rows(again), ["GREA 10 –20 1/2", "SHAD 31 –44 1/4"]);
    // one touch takes back one key, however far back
    await again.getByRole("button", { name: "undo" }).click();
    assert.match(await again.locator(".expected").innerText(), /44 1\/4/);
  },

  async "what the rules do and what looks wrong is said at once, and nothing is refused"({ visit }) {
    const { page } = await visit({ hasTouch: true });
    await openDemo(page);
    await beginLine(page, { line: "91" });
    await intercept(page, "GREA", "10", "20");
    await intercept(page, "GREA", "21 1/2", "30");
    const said = (text) => page.locator(".remark", { hasText: text }).waitFor();
    await said("Gap 1 1/2 in, under the rule of 2.5 in: joined.");
    await intercept(page, "SHAD", "90", "80");
    await said("Stop 80 in lies before start 90 in: swap them?");
    await page.getByRole("button", { name: "Swap" }).click();
    await intercept(page, "SHAD", "85", "95");
    await said(/overlaps SHAD from 85 in to 90 in/);
    await page.getByRole("button", { name: "Leave it so" }).click();
    assert.deepEqual(await rows(page), ["GREA 10 –20", "GREA 21 1/2 –30", "SHAD 80 –90", "SHAD 85 –95"]);
  },

  async "read again on the same day by the same people, it is asked what that means"({ visit }) {
    const { page } = await visit();
    await openDemo(page);
    for (const stop of ["20", "30"]) {
      await beginLine(page, { line: "91" });
      await intercept(page, "GREA", "10", stop);
      if (stop === "20") await closeLine(page);
    }
    await page.getByRole("button", { name: "Close …" }).click();
    await page.getByText("You have read this line on this day already").waitFor();
    await page.getByRole("button", { name: "We read it again" }).click();
    await page.getByRole("link", { name: "Next line" }).waitFor();
  },

  async "twelve intercepts are typed at a desk without the mouse in under sixty strokes beyond the digits"({ visit }) {
    const { page } = await visit({ viewport: SIZES.desktop });
    await openDemo(page);
    await beginLine(page, { line: "91" });
    let beyond = 0;
    const press = async (key) => {
      if (!/^\d$/.test(key)) beyond += 1;
      await page.keyboard.press(key);
    };
    // two letters and enter for a species; a row without one goes on with the species above
    for (let row = 0; row < 12; row += 1) {
      if (row % 4 === 0) for (const key of [...["gr", "sh", "wi"][row / 4], "Enter"]) await press(key);
      for (const digit of String(40 * row + 10)) await press(digit);
      await press("-");
      for (const digit of String(40 * row + 30)) await press(digit);
      await press("Enter");
    }
    assert.equal((await rows(page)).length, 12);
    assert.equal((await rows(page))[11], "WINT 450 470");
    assert.ok(beyond < 60, `${beyond} strokes`);
  },

  async "a sheet typed twice has its differences side by side, and is closed when there are none"({ visit }) {
    const { page } = await visit({ viewport: SIZES.desktop });
    await openDemo(page);
    await beginLine(page, { line: "91" });
    const type = (text) => page.keyboard.type(text);
    await type("gr\n10-20\n30-40\nsh\n50-60\n");
    assert.equal((await rows(page)).length, 3);
    await page.getByRole("button", { name: "More …" }).click();
    await page.getByRole("button", { name: "Type the sheet a second time" }).click();
    await page.getByText("Nothing has been written yet.").waitFor();
    await type("gr\n10-20\n30-45\nsh\n50-60\n");
    await page.getByRole("button", { name: "Close …" }).click();
    await page.locator(".twice", { hasText: "2 rows alike, 1 differs" }).waitFor();
    assert.match((await page.locator(".twice tbody").innerText()).replace(/\s+/g, " "), /GREA 30–40 GREA 30–45/);
    // the slip is in the second typing: its row is put right there
    await page.getByRole("button", { name: "GREA 30–45" }).click();
    await page.getByRole("button", { name: "Stop …" }).click();
    await type("40\n");
    await page.getByRole("button", { name: "Close …" }).click();
    await page.locator(".twice", { hasText: "3 rows alike, none differs" }).waitFor();
    await page.getByRole("button", { name: "Close the line" }).click();
    await page.getByRole("link", { name: "Next line" }).click();
    assert.equal(await page.getByRole("heading", { name: "Go on with" }).count(), 0);
  },

  async "reader and recorder swap at the day's first line, see where they differ, and write down what they agreed on"({ visit }) {
    const { page } = await visit({ hasTouch: true });
    await openDemo(page);
    await beginLine(page, { site: "Rim Draw (invented)", line: "91", length: "50 ft", reader: "Ana", recorder: "Ben" });
    await intercept(page, "GREA", "10", "40");
    await intercept(page, "GREA", "100", "160");
    await closeLine(page);
    await page.getByRole("button", { name: "Swap and read it again" }).click();
    await page.getByText("Nothing has been written yet.").waitFor();
    await intercept(page, "GREA", "10", "40");
    await intercept(page, "GREA", "100", "130");
    await closeLine(page);
    // 90 and 60 of 600 in
    await page.getByText(/Ana has cover 15\.0\s%, Ben 10\.0\s%/).waitFor();
    await page.getByText("From 130 in to 160 in Ana has canopy and Ben has none.").waitFor();
    await page.getByLabel("What you agreed on").fill("plumb the edge");
    await page.getByRole("button", { name: "Write it down" }).click();
    await page.getByText("It stands with the second reading.").waitFor();
  },

  async "a plant that nobody could name is read under a working name, and named later in every row"({ visit }) {
    const { page } = await visit({ hasTouch: true });
    await openDemo(page);
    await beginLine(page, { line: "91" });
    await page.getByRole("button", { name: "new plant" }).click();
    await number(page, "10");
    await number(page, "20");
    assert.deepEqual(await rows(page), ["new plant 1 10 –20"]);
    await closeLine(page);
    await page.getByRole("link", { name: "Next line" }).click();
    await page.getByText("One plant waits for a name").click();
    await page.getByLabel("“new plant 1”, 1 row, is").fill("FOUR");
    await page.keyboard.press("Tab");
    await page.getByText("“new plant 1” is FOUR.").waitFor();
    assert.equal(await page.getByText("One plant waits for a name").count(), 0);
  },

  async "an unfinished line goes along in a copy of everything, and is gone on with elsewhere"({ visit }) {
    const { page } = await visit();
    await openDemo(page);
    await beginLine(page, { line: "91" });
    await intercept(page, "GREA", "10", "20");
    await page.locator(".numbers .digit").getByText("4", { exact: true }).click();
    await kept(page);
    await page.goto(new URL("#/notebook", page.url()).href);
    const [copy] = await Promise.all([page.waitForEvent("download"), page.getByRole("button", { name: "Make a copy" }).click()]);
    const other = await visit();
    await other.page.goto(new URL("#/take-in", other.page.url()).href);
    await other.page.locator('input[type="file"]').setInputFiles(await copy.path());
    await other.page.getByText("one unfinished line").waitFor();
    await other.page.getByRole("button", { name: "Keep it" }).click();
    await other.page.getByRole("link", { name: /Hollow Flat \(invented\)/ }).first().waitFor();
    await other.page.goto(new URL("#/read", other.page.url()).href);
    await other.page.getByRole("link", { name: /line 91: 1 row/ }).click();
    assert.match(await other.page.locator(".expected").innerText(), /GREA starts at\s+4/);
  },

  async "the zero stake's place is noted beside it, and found again without a network"({ visit, stop }) {
    const { context, page } = await visit({ hasTouch: true, permissions: ["geolocation"], geolocation: { latitude: 39.25, longitude: -113.5, accuracy: 4 } });
    await openDemo(page);
    await offlineReady(page);
    await stop();
    await context.setOffline(true);
    await beginLine(page, { line: "91" });
    await intercept(page, "GREA", "10", "20");
    await page.getByRole("button", { name: "More …" }).click();
    await page.getByRole("button", { name: "Note where the zero stake stands" }).click();
    await page.getByText("39.25, -113.5 ± 4 m").waitFor();
    await page.getByRole("button", { name: "Back to the keys" }).click();
    await closeLine(page);
    // a thousandth of a degree south on this meridian: 111.0 m, from a degree of 111.01 km at latitude 39 (WGS 84)
    await context.setGeolocation({ latitude: 39.249, longitude: -113.5, accuracy: 3 });
    await page.goto(new URL("#/read", page.url()).href);
    const form = page.locator("#read-form");
    await form.getByLabel("Site", { exact: true }).fill("Hollow Flat (invented)");
    await form.getByLabel("Line", { exact: true }).fill("91");
    await form.getByRole("button", { name: "Find the zero stake" }).click();
    await page.getByText("111 m to the north, true bearing 0°. Positions may be 5 m off.").waitFor();
    await context.setOffline(false);
  },

  async "axe finds nothing on the reading screen, on any of its panels, in any theme"({ visit }) {
    const { page } = await visit();
    await openDemo(page);
    await setTheme(page, "light");
    await beginLine(page, { line: "91" });
    await intercept(page, "GREA", "10", "20");
    await intercept(page, "GREA", "30", "25");
    const address = page.url();
    for (const theme of THEMES) {
      await setTheme(page, theme);
      await page.goto(address);
      await page.locator(".reading").waitFor();
      assert.deepEqual(await axe(page), [], `keys, ${theme}`);
      for (const panel of ["Rules", "More …", "Close …", "others …"]) {
        await page.getByRole("button", { name: panel }).click();
        assert.deepEqual(await axe(page), [], `${panel}, ${theme}`);
        await page.getByRole("button", { name: "Back to the keys" }).click();
      }
      await page.locator(".rows .row").first().click();
      assert.deepEqual(await axe(page), [], `a row, ${theme}`);
    }
  },

  async "nothing under the thumb is smaller than 48 px"({ visit }) {
    const { page } = await visit({ hasTouch: true });
    await openDemo(page);
    await beginLine(page, { line: "91" });
    await intercept(page, "GREA", "30", "25");
    const low = await page.locator(".reading :is(button, a, input)").evaluateAll((all) =>
      all.filter((one) => { const box = one.getBoundingClientRect(); return box.height < 47.9 || box.width < 47.9; }).map((one) => one.outerHTML),
    );
    assert.deepEqual(low, []);
    assert.ok(await page.evaluate(() => document.documentElement.scrollHeight <= innerHeight + 1), "the screen is longer than it is high");
  },

  async "between two keys nothing runs: no request, no timer, no position"({ visit }) {
    const { page } = await visit();
    await openDemo(page);
    await beginLine(page, { line: "91" });
    await page.addInitScript(() => {
      globalThis.woken = [];
      for (const name of ["setTimeout", "setInterval", "requestAnimationFrame", "requestIdleCallback"]) {
        const own = globalThis[name].bind(globalThis);
        globalThis[name] = (...given) => { globalThis.woken.push(name); return own(...given); };
      }
      for (const name of ["getCurrentPosition", "watchPosition"]) navigator.geolocation[name] = () => globalThis.woken.push(name);
    });
    await page.reload();
    await page.locator(".reading").waitFor();
    await page.locator(".ready button").first().click();
    await kept(page);
    // whatever the opening began comes to its end
    await page.waitForTimeout(11_000);
    const asked = [];
    page.on("request", (request) => asked.push(request.url()));
    await page.evaluate(() => (globalThis.woken.length = 0));
    await page.waitForTimeout(10_000);
    assert.deepEqual(await page.evaluate(() => globalThis.woken), []);
    assert.deepEqual(asked, []);
  },
};
