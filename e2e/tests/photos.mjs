// Photos: taken on a phone without a network, kept, sent, and seen on the desk.
import assert from "node:assert/strict";
import { SCREENS, SIZES, axe, offlineReady, openDemo, show } from "../harness.mjs";

/** What a camera writes (Exif 2.32 on TIFF 6.0, big-endian): a day and 42° 18′ 30.6″ N, 113° 41.7′ W. */
function exif() {
  const text = (tag, word) => [tag, 2, Buffer.from(`${word}\0`), word.length + 1];
  const parts = (tag, ...pairs) => {
    const bytes = Buffer.alloc(8 * pairs.length);
    pairs.flat().forEach((number, at) => bytes.writeUInt32BE(number, 4 * at));
    return [tag, 5, bytes, pairs.length];
  };
  const pointer = (tag, to) => {
    const bytes = Buffer.alloc(4);
    bytes.writeUInt32BE(to);
    return [tag, 4, bytes, 1];
  };
  const directory = (at, entries) => {
    const head = Buffer.alloc(2 + 12 * entries.length + 4);
    head.writeUInt16BE(entries.length);
    const behind = [];
    let next = at + head.length;
    entries.forEach(([tag, kind, bytes, count], number) => {
      const place = 2 + 12 * number;
      head.writeUInt16BE(tag, place);
      head.writeUInt16BE(kind, place + 2);
      head.writeUInt32BE(count, place + 4);
      if (bytes.length <= 4) bytes.copy(head, place + 8);
      else {
        head.writeUInt32BE(next, place + 8);
        behind.push(bytes);
        next += bytes.length;
      }
    });
    return Buffer.concat([head, ...behind]);
  };
  const ownAt = 8 + 2 + 2 * 12 + 4;
  const own = directory(ownAt, [text(0x9003, "2025:06:09 14:03:22")]);
  const place = directory(ownAt + own.length, [
    text(1, "N"),
    parts(2, [42, 1], [18, 1], [306, 10]),
    text(3, "W"),
    parts(4, [113, 1], [417, 10], [0, 1]),
  ]);
  const main = directory(8, [pointer(0x8769, ownAt), pointer(0x8825, ownAt + own.length)]);
  return Buffer.concat([Buffer.from("MM\0*\0\0\0\x08", "latin1"), main, own, place]);
}

/** A photo of 2000 by 1500 pixels as a camera would write it. */
async function photo(page) {
  const drawn = await page.evaluate(() => {
    const canvas = document.createElement("canvas");
    [canvas.width, canvas.height] = [2000, 1500];
    const drawing = canvas.getContext("2d");
    drawing.fillStyle = "#c9b98a";
    drawing.fillRect(0, 0, 2000, 1500);
    drawing.fillStyle = "#7a8a5c";
    for (let at = 0; at < 9; at += 1) drawing.fillRect(120 + 210 * at, 900 - 40 * (at % 4), 120, 260);
    return canvas.toDataURL("image/jpeg", 0.8).split(",")[1];
  });
  const jpeg = Buffer.from(drawn, "base64");
  const app1 = Buffer.concat([Buffer.from("Exif\0\0", "latin1"), exif()]);
  const head = Buffer.from([0xff, 0xd8, 0xff, 0xe1, (app1.length + 2) >> 8, (app1.length + 2) & 255]);
  return { name: "zero.jpg", mimeType: "image/jpeg", buffer: Buffer.concat([head, app1, jpeg.subarray(2)]) };
}

const reopened = async (page) => {
  await page.reload();
  await page.locator("html[data-opened]").waitFor({ state: "attached" });
  await page.locator(".photos img").first().waitFor();
};

/** How wide the first photo is, once it is drawn. */
const width = (page) =>
  page.locator(".photos img").first().evaluate(async (image) => {
    await image.decode();
    return image.naturalWidth;
  });

const take = async (page, file) => {
  await page.getByText("Take a photo", { exact: true }).first().click();
  await page.getByLabel("It shows").selectOption("start");
  await page.locator("input[capture]").setInputFiles(file);
  await page.getByText("The photo is kept on this device.").waitFor();
};

export const tests = {
  async "a photo taken without a network is kept, goes to the desk and is seen there"({ visit }) {
    const { context, page } = await visit();
    await openDemo(page);
    await offlineReady(page);
    const file = await photo(page);
    await context.setOffline(true);
    await show(page, SCREENS.site);
    await take(page, file);
    await reopened(page);
    assert.equal(await width(page), 1600, "its longest edge is 1600 pixels");
    const said = await page.locator(".photos figcaption").first().textContent();
    assert.match(said, /2025-06-09 14:03:22/);
    assert.match(said, /42\.3085\d* .113\.695/);
    assert.deepEqual(await axe(page), []);
    for (const one of await page.locator(".photos :is(input, select, summary, .button)").all()) {
      const box = await one.boundingBox();
      assert.ok(!box || box.height >= 23, `${box?.height}`);
    }
    for (const one of await page.locator(".photos .button").all()) {
      assert.ok((await one.boundingBox()).height >= 48);
    }
    await context.setOffline(false);
    await show(page, SCREENS.notebook);
    await page.getByRole("button", { name: "Share now" }).click();
    await page.locator(".badge.sync-sent").waitFor();
    const desk = await visit({ viewport: SIZES.desktop });
    await desk.page.getByRole("link", { name: /Hollow Flat \(invented\)/ }).first().click();
    await desk.page.locator(".photos img").first().waitFor();
    assert.equal(await width(desk.page), 1600);
  },

  async "without the tick only the day of a photo is kept"({ visit }) {
    const { page } = await visit();
    await openDemo(page);
    const file = await photo(page);
    await show(page, SCREENS.site);
    await page.getByText("Take a photo", { exact: true }).first().click();
    await page.getByLabel("Keep the place and the time of day").uncheck();
    await page.locator("input[capture]").setInputFiles(file);
    await page.getByText("The photo is kept on this device.").waitFor();
    const said = await page.locator(".photos figcaption").first().textContent();
    assert.match(said, /2025-06-09/);
    assert.doesNotMatch(said, /14:03|42\.3/);
  },
};
