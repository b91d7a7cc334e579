// Looks at pages in headless Chromium and says as JSON what it saw of each.
// stdin: {"chromium": path, "tools": folder of node_modules, "pages": 
// {name: {"html": path, "pictures": folder, "views": how many}}}
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';

const asked = JSON.parse(readFileSync(0, 'utf8'));
const require = createRequire(join(asked.tools, 'node_modules', 'x'));
const { chromium } = require('playwright-core');
const axe = readFileSync(require.resolve('axe-core/axe.min.js'), 'utf8');
const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'best-practice'];
const VIEWS = [[1280, 'light'], [390, 'dark'], [1280, 'dark'], [390, 'light']];

const browser = await chromium.launch({
  executablePath: asked.chromium,
  args: ['--no-sandbox', '--disable-gpu', '--disable-background-networking'],
});

/** Faults that axe-core finds: rule, impact, and the first elements that have them. */
async function faults(page) {
  await page.evaluate(axe);
  const found = await page.evaluate((tags) => axe.run(document, { runOnly: tags }), TAGS);
  return found.violations.map((each) => ({
    rule: each.id,
    impact: each.impact,
    where: each.nodes.slice(0, 3).map((node) => node.html.slice(0, 200)),
  }));
}

/** What the keyboard alone reaches, and whether it shows where it is. */
async function keyboard(page) {
  const at = () => page.evaluate(() => {
    const here = document.activeElement;
    const { outlineStyle, outlineWidth } = getComputedStyle(here);
    return { name: here.className || here.id || here.tagName, outlineStyle, outlineWidth };
  });
  await page.keyboard.press('Tab');
  const first = await at();
  await page.keyboard.press('Enter');
  const then = await page.evaluate(() => location.hash);
  await page.keyboard.press('Tab');
  return { first, then, next: await at() };
}

/** The headings that are printed. */
async function printed(page) {
  await page.emulateMedia({ media: 'print' });
  const found = await page.evaluate(() => [...document.querySelectorAll('h2, h3')]
    .filter((each) => each.checkVisibility() && each.getClientRects().length)
    .map((each) => each.innerText));
  await page.emulateMedia({ media: 'screen' });
  return found;
}

/** What is in a document that ought not to be, and how wide it is. */
function contents() {
  const attributes = [...document.querySelectorAll('*')].flatMap((each) => [...each.attributes]);
  return {
    text: document.body.innerText,
    scripts: document.scripts.length,
    images: document.images.length,
    frames: window.frames.length,
    handlers: attributes.filter((each) => each.name.startsWith('on')).length,
    reached: Object.keys(window).includes('reached'),
    scrolled: document.documentElement.scrollWidth,
  };
}

const seen = {};
for (const [name, { html, pictures, views }] of Object.entries(asked.pages)) {
  seen[name] = { console: [], requests: [], views: [] };
  for (const [width, colorScheme] of VIEWS.slice(0, views)) {
    const page = await browser.newPage({ viewport: { width, height: 900 }, colorScheme });
    page.on('console', (each) => seen[name].console.push(each.text()));
    page.on('pageerror', (each) => seen[name].console.push(String(each)));
    page.on('dialog', (each) => { seen[name].console.push('dialog'); each.dismiss(); });
    page.on('request', (each) => seen[name].requests.push(each.url()));
    await page.goto(pathToFileURL(html).href);
    const view = { width, colorScheme, ...(await page.evaluate(contents)), faults: await faults(page) };
    await page.screenshot({
      path: join(pictures, `${name}-${width}-${colorScheme}.png`),
      clip: { x: 0, y: 0, width, height: 1800 },
      fullPage: true,
    });
    if (view.width === 1280 && colorScheme === 'light') {
      view.keyboard = await keyboard(page);
      view.printed = await printed(page);
      for (const format of views > 2 ? ['A4', 'Letter'] : []) {
        await page.pdf({ path: join(pictures, `${name}-${format}.pdf`), format });
      }
    }
    seen[name].views.push(view);
    await page.close();
  }
}
await browser.close();
console.log(JSON.stringify(seen));
