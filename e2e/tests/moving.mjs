// A shared notebook that moves to another address: what is on the device alone is sent or copied first.
import assert from "node:assert/strict";
import { SCREENS, SIZES, axe, openDemo, show } from "../harness.mjs";

export const tests = {
  async "a device hears that the notebook moves, and what to do first"({ visit }) {
    const { context, page } = await visit({ viewport: SIZES.phone });
    // the header stands on the server's answers once it was told where it moves
    await page.route("**/api/sync", async (route) => {
      const answer = await route.fetch();
      await route.fulfill({ response: answer, headers: { ...answer.headers(), "tautline-moving-to": "https://flats-2.local" } });
    });
    await openDemo(page);
    await show(page, SCREENS.notebook);
    await page.getByRole("button", { name: "Share now" }).click();
    const notice = page.getByLabel("The notebook moves");
    await notice.getByText("All that is on this device has been sent").waitFor();
    assert.match(await notice.textContent(), /https:\/\/flats-2\.local/);
    // what is written now is on this device alone, once the exchange has come to its end
    await page.locator(".badge:not(.under-way)").waitFor();
    await page.unrouteAll({ behavior: "wait" }); // what the test itself fetches would pass although the page is offline
    await context.setOffline(true);
    await show(page, "#/take-in");
    const sheet = "site,line,line length,species,start (decimal ft),stop (decimal ft)\nNew Draw (invented),1,100 ft,ATCA,12.0,14.5\n";
    const files = { name: "new-draw.csv", mimeType: "text/csv", buffer: Buffer.from(sheet) };
    await page.locator('input[type="file"]').setInputFiles(files);
    await page.getByRole("button", { name: "Keep it" }).click();
    await notice.getByText("share it now, or take a copy").waitFor();
    assert.deepEqual(await axe(page), []);
    assert.ok((await notice.getByRole("link").boundingBox()).height >= 48);
  },
};
