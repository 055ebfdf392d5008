// A newer version: offered when nobody is in the middle of a line, taken when a person says so, and what was begun is still there.
import assert from "node:assert/strict";
import { cp, readFile, rm, unlink, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { APP, SIZES, axe, beginLine, folder, intercept, kept, number, offlineReady, openDemo, serve, show, visitor } from "../harness.mjs";

/** Makes another version of a built folder: its first page and its worker say so. */
async function renew(app, mark) {
  const change = async (name, how) => {
    const path = join(app, name);
    await writeFile(path, how(await readFile(path, "utf8")));
    // a packed copy beside it would still be the old one
    await unlink(`${path}.br`).catch(() => {});
  };
  await change("index.html", (text) => text.replace("<head>", `<head>\n<meta name="tried-version" content="${mark}">`));
  await change("worker.js", (text) => text.replace(/"tautline-[0-9a-z]+"/, `"tautline-${mark}"`));
}

const version = (page) => page.evaluate(() => document.querySelector('meta[name="tried-version"]')?.content ?? "first");

export const tests = {
  async "a newer version is offered, never in mid-reading, and taken with nothing lost"({ browser }) {
    const own = await folder();
    const app = join(own, "app");
    await cp(APP, app, { recursive: true });
    const server = await serve(app);
    const { context, page, wrong } = await visitor(browser, server.origin, { hasTouch: true });
    try {
      await openDemo(page);
      await offlineReady(page);
      await page.reload();
      await page.locator("html[data-opened]").waitFor({ state: "attached" });
      await beginLine(page, { line: "91" });
      await intercept(page, "GREA", "10", "20 1/2");
      await page.locator(".ready").getByRole("button", { name: "SHAD", exact: true }).click();
      await page.locator(".numbers .digit").getByText("3", { exact: true }).click();
      await kept(page);
      await page.evaluate(() => (globalThis.same = true));
      await renew(app, "second");
      // what a browser does by itself on the next visit, or after a day
      await page.evaluate(async () => {
        const own = await navigator.serviceWorker.getRegistration();
        await own.update();
        const coming = own.installing ?? own.waiting;
        while (coming.state === "installing") await new Promise((done) => coming.addEventListener("statechange", done, { once: true }));
      });
      const offer = page.getByLabel("A newer version");
      // it is there, and says nothing while the line is on the screen
      await offer.waitFor({ state: "attached" });
      assert.equal(await offer.isVisible(), false);
      assert.ok(await page.evaluate(() => document.documentElement.scrollHeight <= innerHeight + 1), "the screen is as high as before");
      await number(page, "1");
      await kept(page);
      assert.equal(await page.evaluate(() => globalThis.same), true, "the page was loaded again in mid-reading");
      assert.equal(await version(page), "first");
      // opened again without being taken, it is the version before still
      await page.reload();
      await page.locator(".expected").waitFor();
      assert.equal(await version(page), "first");
      assert.match(await page.locator(".expected").innerText(), /SHAD from 31 stops at/);
      await page.locator(".numbers .digit").getByText("4", { exact: true }).click();
      await kept(page);
      await show(page, "#/read");
      await offer.waitFor();
      assert.deepEqual(await axe(page), []);
      assert.ok((await offer.getByRole("button").boundingBox()).height >= 48);
      await Promise.all([page.waitForEvent("load"), offer.getByRole("button", { name: "Take it now" }).click()]);
      await page.locator("html[data-opened]").waitFor({ state: "attached" });
      assert.equal(await version(page), "second");
      assert.equal(await offer.count(), 0);
      // in the middle of the number still
      await page.getByRole("link", { name: /line 91: 1 row/ }).click();
      await page.locator(".expected").waitFor();
      assert.match(await page.locator(".expected").innerText(), /SHAD from 31 stops at\s+4/);
      // the files of the version before stay, for a window that reads a line by it; no others do
      const versions = await page.evaluate(() => caches.keys());
      assert.equal(versions.length, 2);
      assert.equal(versions.at(-1), "tautline-second");
      assert.deepEqual(wrong, []);
    } finally {
      await context.close();
      await server.stop();
      await rm(own, { recursive: true, force: true });
    }
  },

  async "with two windows open, one that reads a line is not loaded again until it is done"({ browser }) {
    const own = await folder();
    const app = join(own, "app");
    await cp(APP, app, { recursive: true });
    const server = await serve(app);
    const { context, page } = await visitor(browser, server.origin, { viewport: SIZES.desktop });
    try {
      await openDemo(page);
      await offlineReady(page);
      await page.reload();
      await page.locator("html[data-opened]").waitFor({ state: "attached" });
      await beginLine(page, { line: "91" });
      await intercept(page, "GREA", "10", "20");
      await kept(page);
      const other = await context.newPage();
      other.setDefaultTimeout(60_000);
      await other.goto(new URL("#/", server.origin).href);
      await other.locator("html[data-opened]").waitFor({ state: "attached" });
      await page.evaluate(() => (globalThis.same = true));
      await renew(app, "second");
      await other.evaluate(async () => (await navigator.serviceWorker.getRegistration()).update());
      const offer = other.getByLabel("A newer version");
      await Promise.all([other.waitForEvent("load"), offer.getByRole("button", { name: "Take it now" }).click()]);
      await other.locator("html[data-opened]").waitFor({ state: "attached" });
      assert.equal(await version(other), "second");
      // the line is read on under the version that it was begun with
      await intercept(page, "SHAD", "30", "40");
      await kept(page);
      assert.equal(await page.evaluate(() => globalThis.same), true, "the page was loaded again in mid-reading");
      // whoever leaves the line gets the newer version
      await Promise.all([page.waitForEvent("load"), page.getByRole("link", { name: "Lines" }).click()]);
      await page.getByRole("link", { name: /line 91: 2 rows/ }).waitFor();
      assert.equal(await version(page), "second");
    } finally {
      await context.close();
      await server.stop();
      await rm(own, { recursive: true, force: true });
    }
  },
};
