// The method handbook: found by words, read without a network, and reached from what a report says of its own words.
import assert from "node:assert/strict";
import { offlineReady, openDemo, show } from "../harness.mjs";

const pageLinks = (page) => page.locator(".handbook .pages a");

export const tests = {
  async "the handbook names its pages, finds words in them, and a page leads to the next"({ visit }) {
    const { page } = await visit();
    await show(page, "#/handbook");
    await pageLinks(page).first().waitFor();
    assert.equal(await pageLinks(page).count(), 27);
    await page.getByLabel("Find in the handbook").fill("standard error");
    // the page whose title has both words comes first; others have them in what they say
    assert.equal(await pageLinks(page).first().locator("strong").innerText(), "Standard error");
    const found = await pageLinks(page).count();
    assert.ok(found > 1 && found < 27, `${found}`);
    assert.equal(await page.getByRole("status").first().innerText(), `${found} pages`);
    await page.getByLabel("Find in the handbook").fill("xylophone");
    await page.getByText("No page has these words.").waitFor();
    await page.getByLabel("Find in the handbook").fill("verdict met");
    await pageLinks(page).first().click();
    await page.getByRole("heading", { level: 1, name: "The verdict" }).waitFor();
    await page.getByRole("heading", { level: 2, name: "When not to trust it" }).waitFor();
    await page.getByRole("navigation", { name: "The pages before and after" }).getByRole("link", { name: /How many lines/ }).click();
    await page.getByRole("heading", { level: 1, name: "How many lines" }).waitFor();
    await show(page, "#/handbook/no-such-page");
    await page.getByText("The handbook has no page “no-such-page”.").waitFor();
  },

  async "the handbook opens without a network, also where nobody opened it before"({ visit, stop }) {
    const { context, page } = await visit();
    await offlineReady(page);
    await page.waitForFunction(async () => Boolean(await caches.match("handbook.json")));
    await stop();
    await context.setOffline(true);
    await page.reload();
    await page.locator("html[data-opened]").waitFor({ state: "attached" });
    await show(page, "#/handbook/gap-rule");
    await page.getByRole("heading", { level: 1, name: "Reading a line and the gap rule" }).waitFor();
  },

  async "a site's report says what its words mean, and leads to the handbook"({ visit }) {
    const { page } = await visit();
    await openDemo(page);
    await page.getByRole("link", { name: /Hollow Flat \(invented\)/ }).first().click();
    const interval = page.locator("details.meaning", { hasText: "nine of ten such surveys" });
    await interval.waitFor({ state: "attached" });
    assert.equal(await interval.getAttribute("open"), null);
    await interval.locator("summary").click();
    await interval.locator("svg").waitFor();
    await interval.getByRole("link", { name: /handbook/ }).click();
    await page.getByRole("heading", { level: 1, name: "The interval" }).waitFor();
  },
};
