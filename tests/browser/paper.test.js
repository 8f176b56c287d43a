// What goes on paper for site, in a browser: the setting-out sheet and the survey card.
import assert from 'node:assert/strict';
import { after, before, describe, test } from 'node:test';
import { clippedText, colours, graveFaults, overflow, pagesOnPaper, textOnText } from './faults.js';
import { hostileNames, jobNamed } from './hostile.js';
import { exampleText, launch, open, pageOf, steady, surveyCard } from './pages.js';

let browser;
before(async () => { browser = await launch(); });
after(() => browser.close());

/** Everything that holds of each page for site. */
async function assertSound(path) {
  const { page, requests, surprises, close } = await open(browser, path);
  assert.deepEqual(requests, [`file://${path}`]);
  assert.deepEqual(surprises, []);
  assert.equal(await page.getAttribute('html', 'lang'), 'en');
  assert.deepEqual(await graveFaults(page), []);
  await page.emulateMedia({ media: 'print' });
  assert.deepEqual(await colours(page), [], 'black and white');
  assert.deepEqual(await clippedText(page), []);
  assert.deepEqual(await textOnText(page), []);
  assert.ok((await overflow(page)) <= 0, 'no sideways scrolling');
  await close();
}

test('the survey card is one page, black and white', async () => {
  const path = surveyCard();
  await assertSound(path);
  const { page, close } = await open(browser, path);
  assert.equal(await pagesOnPaper(page), 1);
  await close();
});

describe('a setting-out sheet', () => {
  for (const example of ['steel-casement', 'old-sash', 'painted-shut-light', 'thin-film', 'hold-way-out',
    'damp-shower-room', 'house/quince-row'])
    test(`of ${example} is sound`, async () => assertSound(pageOf('setting-out', exampleText(`${example}.toml`))));

  // Sizes from a fixed sequence: the drawing has to hold for each.
  for (let i = 1; i <= 12; ++i) {
    const width = 300 + ((i * 617) % 1900);
    const height = 300 + ((i * 887) % 2100);
    test(`of an opening of ${width} x ${height} mm has no label on a label`, async () => {
      await assertSound(pageOf('setting-out', sized(width, height), ...steady));
    });
  }

  for (const [kind, name] of Object.entries(hostileNames))
    test(`with a name of ${kind} keeps it a name`, async () => {
      const path = pageOf('setting-out', jobNamed(name, 'steel-casement.toml'), ...steady);
      const { page, requests, surprises, close } = await open(browser, path);
      assert.deepEqual(requests, [`file://${path}`]);
      assert.deepEqual(surprises, []);
      assert.equal(await page.$$eval('script, img, iframe, object, embed', (all) => all.length), 0);
      assert.ok((await overflow(page)) <= 0, 'no sideways scrolling');
      await close();
    });
});

/** The painted-shut light with another opening. */
function sized(width, height) {
  return exampleText('painted-shut-light.toml')
    .replace(/^opening_widths_mm = .*$/m, `opening_widths_mm = [${width}, ${width}, ${width - 1}]`)
    .replace(/^opening_heights_mm = .*$/m, `opening_heights_mm = [${height}, ${height + 1}, ${height}]`)
    .replace(/^(diagonals_mm|glass_width_mm|glass_height_mm|panes) = .*\n/gm, '');
}
