// Two devices and one record: what both write without a network meets when they come back, and a person settles it.
import assert from "node:assert/strict";
import { SIZES, axe, show } from "../harness.mjs";

/** One reading of one line of 100 ft, from 12 ft to a stop: its cover is the difference, in per cent. */
const sheet = (stop) => ({
  name: "two-readers.csv",
  mimeType: "text/csv",
  buffer: Buffer.from(
    `site,line,line length,date,reader,species,start (decimal ft),stop (decimal ft)\nTwo Readers Flat (invented),1,100 ft,2026-06-09,Ada,SHAD,12.0,${stop}\n`,
  ),
});

async function write(page, stop) {
  await show(page, "#/take-in");
  await page.locator('input[type="file"]').setInputFiles(sheet(stop));
  await page.getByRole("button", { name: "Keep it" }).click();
  await page.waitForURL(/#\/$/);
}

const covers = (page, cover) => page.getByRole("link", { name: new RegExp(`Two Readers Flat.*cover ${cover} %`) }).waitFor();

async function signed(page, name) {
  await show(page, "#/notebook");
  await page.getByLabel("Your name").fill(name);
  await page.getByLabel("Your name").blur();
}

async function share(page) {
  await show(page, "#/notebook");
  await page.getByRole("button", { name: "Share now" }).click();
}

export const tests = {
  async "two devices correct one visit without a network, come back, and one of them settles it"({ visit }) {
    const ada = await visit();
    await write(ada.page, "22.0");
    await covers(ada.page, "10\\.0");
    await ada.page.locator(".badge.sync-sent").waitFor();
    const ben = await visit({ viewport: SIZES.desktop });
    await covers(ben.page, "10\\.0");
    for (const [one, name, stop, cover] of [[ada, "Ada", "32.0", "20\\.0"], [ben, "Ben", "42.0", "30\\.0"]]) {
      await signed(one.page, name);
      await one.context.setOffline(true);
      await write(one.page, stop);
      await covers(one.page, cover);
      await one.page.locator(".badge.sync-here").waitFor();
    }
    await ada.context.setOffline(false);
    await share(ada.page);
    await ada.page.locator(".badge.sync-sent").waitFor();
    await ben.context.setOffline(false);
    await share(ben.page);
    await ben.page.locator(".badge.sync-to-settle").click();
    // neither is used meanwhile
    await ben.page.getByRole("heading", { name: "Settle" }).waitFor();
    assert.equal(await ben.page.locator(".version").count(), 2);
    assert.deepEqual(await axe(ben.page), []);
    await show(ben.page, "#/");
    assert.doesNotMatch(await ben.page.locator("main").innerText(), /cover [123]0\.0 %/);
    await show(ben.page, "#/settle");
    const versions = ben.page.locator(".version");
    assert.match((await versions.allInnerTexts()).join("\n"), /32[\s\S]*42|42[\s\S]*32/);
    await ben.page.getByLabel("Why (if you like)").fill("read from the sheet again");
    await versions.filter({ hasText: "by Ada" }).getByRole("button", { name: "This one stands" }).click();
    await ben.page.getByText("Settled. The other stays in the history.").waitFor();
    await show(ben.page, "#/");
    await covers(ben.page, "20\\.0");
    await ben.page.locator(".badge.sync-sent").waitFor();
    await share(ada.page);
    await ada.page.locator(".badge.sync-sent").waitFor();
    await show(ada.page, "#/");
    await covers(ada.page, "20\\.0");
    await show(ada.page, "#/history");
    await ada.page.getByText("read from the sheet again").waitFor();
  },
};
