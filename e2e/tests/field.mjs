// On the line: photos over the last ones and of the sheet, and a second reading without sight of the first.
import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { axe, beginLine, closeLine, command, folder, intercept, kept, openDemo, show } from "../harness.mjs";

const SITE = "Rim Draw (invented)";
const camera = { permissions: ["camera"], hasTouch: true };

/** The camera shows something. */
const seeing = (page) =>
  page.waitForFunction(() => {
    const video = document.querySelector(".viewfinder video");
    return video && video.videoWidth > 0 && video.readyState >= 2;
  });

const tracks = (page) =>
  page.evaluate(() => globalThis.given.flatMap((stream) => stream.getTracks().map((track) => track.readyState)));

/** Remembers what the page was given, to see whether it lets go of it. */
const remember = (context) =>
  context.addInitScript(() => {
    globalThis.given = [];
    const own = navigator.mediaDevices.getUserMedia.bind(navigator.mediaDevices);
    navigator.mediaDevices.getUserMedia = async (wanted) => {
      const stream = await own(wanted);
      globalThis.given.push(stream);
      return stream;
    };
  });

/** A sheet as a scanner writes it. */
async function scan(page) {
  const drawn = await page.evaluate(() => {
    const canvas = document.createElement("canvas");
    [canvas.width, canvas.height] = [1700, 2200];
    const drawing = canvas.getContext("2d");
    drawing.fillStyle = "#fff";
    drawing.fillRect(0, 0, 1700, 2200);
    drawing.fillStyle = "#222";
    for (let at = 0; at < 24; at += 1) drawing.fillRect(150, 200 + 80 * at, 1400, 3);
    return canvas.toDataURL("image/png").split(",")[1];
  });
  return { name: "sheet.png", mimeType: "image/png", buffer: Buffer.from(drawn, "base64") };
}

const begin = (page, more = {}) => beginLine(page, { site: SITE, line: "91", length: "50 ft", reader: "Ana", recorder: "Ben", ...more });

export const tests = {
  async "a photo is taken over the last one of the same view, and the camera is let go"({ visit }) {
    const { context, page } = await visit(camera);
    await remember(context);
    await page.reload();
    await openDemo(page);
    await begin(page);
    await intercept(page, "GREA", "10", "40");
    const way = async () => {
      await page.getByRole("button", { name: "More …" }).click();
      await page.getByRole("link", { name: "Photo: from the zero" }).click();
      await seeing(page);
    };
    await way();
    await page.getByText("The notebook has no photo of this view yet").waitFor();
    assert.equal(await page.locator(".over").count(), 0);
    assert.deepEqual(await axe(page), []);
    await page.getByRole("button", { name: "Take it", exact: true }).click();
    await page.getByAltText("The photo as it would be kept").waitFor();
    await page.getByRole("button", { name: "Keep it" }).click();
    await page.getByText("The photo is kept on this device.").waitFor();
    // back on the line, in the same place
    await page.locator(".reading").waitFor();
    assert.deepEqual([...new Set(await tracks(page))], ["ended"]);
    await way();
    const over = page.locator(".over img");
    await over.waitFor();
    assert.ok(await over.evaluate(async (image) => (await image.decode(), image.naturalWidth)) > 0);
    const strength = () => page.locator(".over").evaluate((one) => getComputedStyle(one).opacity);
    assert.equal(await strength(), "0.5");
    await page.getByLabel("How much of the last photo shows").fill("1");
    assert.equal(await strength(), "0.25");
    assert.deepEqual(await axe(page), []);
    for (const one of await page.locator("main :is(.button, button, input[type=range])").all()) {
      assert.ok((await one.boundingBox()).height >= 47.9);
    }
    await page.getByRole("button", { name: "Back", exact: true }).click();
    await page.locator(".reading").waitFor();
    assert.deepEqual([...new Set(await tracks(page))], ["ended"]);
    // the same way from the site's photos
    await show(page, `#/site/${encodeURIComponent(SITE)}`);
    await page.getByRole("link", { name: "Take it again, over the last one" }).click();
    await seeing(page);
    await page.locator(".over img").waitFor();
  },

  async "a photo of one intercept says which, and the line goes on where it was"({ visit }) {
    const { page } = await visit(camera);
    await openDemo(page);
    await begin(page);
    await intercept(page, "GREA", "10", "40");
    await page.locator(".rows .row").first().click();
    await page.locator(".menu").getByRole("link", { name: "Photo …" }).click();
    await seeing(page);
    await page.getByRole("button", { name: "Take it", exact: true }).click();
    await page.getByAltText("The photo as it would be kept").waitFor();
    assert.equal(await page.getByLabel("What there is to say of it").inputValue(), "GREA 10–40");
    await page.getByRole("button", { name: "Keep it" }).click();
    await page.getByText("The photo is kept on this device.").waitFor();
    await page.locator(".rows .row").first().getByText("GREA").waitFor();
    await show(page, `#/site/${encodeURIComponent(SITE)}`);
    await page.getByText("GREA 10–40").first().waitFor();
  },

  async "where the browser gives no camera, the last photo stands beside and a file is taken"({ visit }) {
    const { context, page } = await visit();
    // as a browser is on a page that came over an open line
    await context.addInitScript(() => Object.defineProperty(navigator, "mediaDevices", { value: undefined }));
    await page.reload();
    await openDemo(page);
    await show(page, `#/photo/${encodeURIComponent(SITE)}/91/start`);
    await page.getByText("The browser gives no camera here").waitFor();
    assert.deepEqual(await axe(page), []);
    await page.locator('input[type="file"]').setInputFiles(await scan(page));
    await page.getByRole("button", { name: "Keep it" }).click();
    await page.getByText("The photo is kept on this device.").waitFor();
    await show(page, `#/photo/${encodeURIComponent(SITE)}/91/start`);
    await page.locator(".viewfinder img").waitFor();
    await page.getByText(/Stand so that stakes and skyline lie as on it/).waitFor();
  },

  async "a scan of the sheet is kept with its visit and stands under the line"({ visit }) {
    const { page } = await visit();
    await openDemo(page);
    await begin(page);
    await intercept(page, "GREA", "10", "40");
    await closeLine(page);
    await page.getByRole("link", { name: "Photo: the sheet" }).click();
    await page.getByText("Lay the sheet flat").waitFor();
    await page.locator('input[type="file"]').setInputFiles(await scan(page));
    await page.getByRole("button", { name: "Keep it" }).click();
    await page.getByText("The photo is kept on this device.").waitFor();
    await show(page, `#/site/${encodeURIComponent(SITE)}`);
    await page.getByRole("heading", { name: "Line 91, the sheet" }).waitFor();
    await page.locator(".photos img").first().waitFor();
    // the record says whose reading it is of
    await show(page, "#/notebook");
    const [copy] = await Promise.all([page.waitForEvent("download"), page.getByRole("button", { name: "Make a copy" }).click()]);
    const line = (await readFile(await copy.path(), "utf8")).split("\n").find((one) => one.includes('\\"shows\\":\\"sheet\\"') || one.includes('"shows":"sheet"'));
    assert.match(line, /reader\\?":\\?"Ana/);
    assert.match(line, /recorder\\?":\\?"Ben/);
  },

  async "whether to read on is said under a plan chosen beforehand, and under no other"({ visit }) {
    const { page } = await visit({ hasTouch: true });
    await openDemo(page);
    const at = await folder();
    const notebook = join(at, "n.tautline");
    const today = await page.evaluate(() => `${new Date().getFullYear()}-01-02`);
    const objective = (name, site, agreed) =>
      command("ledger", "objective", "--notebook", notebook, "--site", site, "--name", name, "--goal", "at least 15 %", "--looks", "2 to 9", "--agreed", agreed);
    for (const [name, site, agreed] of [["early", "Plan Flat (invented)", `owner, ${today}`], ["late", "Late Flat (invented)", "owner, 2999-01-01"]]) {
      assert.equal((await objective(name, site, agreed)).status, 0);
    }
    const { text } = await command("export", "--full", "--notebook", notebook);
    await show(page, "#/take-in");
    await page.locator('main input[type="file"]').setInputFiles({ name: "plan.jsonl", mimeType: "application/jsonl", buffer: Buffer.from(text) });
    await page.getByRole("button", { name: "Keep it" }).click();
    await page.locator(".sites li").first().waitFor();
    const read = async (site, line) => {
      await beginLine(page, { site, line, length: "50 ft", reader: "Ana" });
      // 12 in and 13 in of 600 in: 2.0 and 2.2 %, far below 15 %
      await intercept(page, "GREA", "100", line === "1" ? "112" : "113");
      await closeLine(page);
    };
    await read("Plan Flat (invented)", "1");
    await page.getByText("Under the sequential plan: 1 lines read, not one of the looks. Read on.").waitFor();
    await read("Plan Flat (invented)", "2");
    await page.getByText("Under the sequential plan: not met, after 2 lines.").waitFor();
    assert.deepEqual(await axe(page), []);
    await read("Late Flat (invented)", "1");
    await page.getByText("was written down after the first line of this visit was read").waitFor();
    await read("Rim Draw (invented)", "91");
    assert.equal(await page.getByText("sequential plan").count(), 0);
  },

  async "while a line is read blind nothing of the first reading is in sight on any screen"({ visit }) {
    const { page } = await visit({ hasTouch: true });
    await openDemo(page);
    // 543.21 in is in no other reading
    await begin(page, { line: "91", length: "50 ft" });
    await intercept(page, "GREA", "10", "543 7/8");
    await closeLine(page);
    await page.getByRole("link", { name: "Photo: the sheet" }).click();
    await page.locator('input[type="file"]').setInputFiles(await scan(page));
    await page.getByRole("button", { name: "Keep it" }).click();
    await page.getByText("The photo is kept on this device.").waitFor();
    const everywhere = async () => {
      const found = {};
      for (const hash of ["#/", `#/site/${encodeURIComponent(SITE)}`, "#/read", "#/settle", "#/take-in", "#/notebook"]) {
        await show(page, hash);
        if (hash.startsWith("#/site/")) await page.locator(".sheet article table").first().waitFor();
        await page.waitForTimeout(300);
        found[hash] = await page.evaluate(() => {
          const all = (root) => [root.textContent, ...[...root.querySelectorAll("*")].filter((one) => one.shadowRoot).map((one) => all(one.shadowRoot))];
          return all(document.body).flat(9).join(" ");
        });
      }
      return found;
    };
    // 533 7/8 of 600 in is 89.0 %: it stands on the site's page, and so do the row and the sheet
    const before = (await everywhere())[`#/site/${encodeURIComponent(SITE)}`];
    assert.match(before, /89\.0/);
    assert.match(before, /Line 91, the sheet/);
    const home = (await everywhere())["#/"];
    await show(page, "#/read");
    await page.locator("#read-form").getByLabel("A second reading").check();
    const form = page.locator("#read-form");
    await form.getByLabel("Site", { exact: true }).fill(SITE);
    await form.getByLabel("Line", { exact: true }).fill("91");
    await form.getByLabel("Who reads the tape").fill("Ben");
    await form.getByLabel("Who writes").fill("Ana");
    await form.getByRole("button", { name: "Begin at the zero stake" }).click();
    await page.locator(".reading").waitFor();
    await intercept(page, "GREA", "10", "40");
    await kept(page);
    const address = page.url();
    const look = async () => {
      const all = await everywhere();
      for (const [hash, text] of Object.entries(all)) {
        assert.doesNotMatch(text, /543|533|89\.0|Line 91, the sheet/, hash);
      }
      assert.notEqual(all["#/"], home, "the home screen's figure is without it");
      assert.match(all["#/"], /Out of sight while somebody reads it a second time: Rim Draw \(invented\), line 91/);
    };
    await look();
    // opened again, the stored summaries don't tell either
    await page.reload();
    await page.locator("html[data-opened]").waitFor({ state: "attached" });
    await look();
    await page.goto(address);
    await page.locator(".reading").waitFor();
    await closeLine(page);
    await page.getByText(/Ana has cover 89\.0\s%, Ben 5\.0\s%/).waitFor();
    assert.match((await everywhere())[`#/site/${encodeURIComponent(SITE)}`], /Line 91, the sheet/);
  },

  async "a first reader's unfinished draft waits while the line is read blind"({ visit }) {
    const { page } = await visit({ hasTouch: true });
    await openDemo(page);
    await begin(page);
    await intercept(page, "GREA", "10", "40");
    await kept(page);
    const first = page.url();
    await show(page, "#/read");
    await page.locator("#read-form").getByLabel("A second reading").check();
    await begin(page, { reader: "Ben", recorder: "Ana" });
    await show(page, "#/read");
    await page.getByText("One draft waits until the second reading of its line is closed.").waitFor();
    assert.equal(await page.getByRole("link", { name: /line 91/ }).count(), 1);
    await page.goto(first);
    await page.getByText("Somebody is reading this line a second time").waitFor();
    await show(page, "#/read");
    await page.getByRole("link", { name: /line 91: nothing yet/ }).click();
    await page.getByRole("button", { name: "More …" }).click();
    await page.getByRole("button", { name: "Throw this draft away" }).click();
    await page.getByRole("button", { name: /Yes, throw it away/ }).click();
    await page.getByRole("link", { name: /line 91: 1 row/ }).click();
    await page.locator(".reading").waitFor();
  },
};
