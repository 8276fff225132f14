// What is measured of a state of the page, in the page.

/** Sideways scroll, and what sticks out of the screen. */
export function sideways() {
  const wide = document.documentElement.clientWidth;
  const out = [...document.body.querySelectorAll('*')]
    .filter((el) => el.checkVisibility({ visibilityProperty: true }) && !el.closest('.unseen, .skip'))
    .filter((el) => el.getBoundingClientRect().right > wide + 1 && !scrolls(el))
    .map((el) => `${el.tagName.toLowerCase()}.${el.className} "${el.textContent.trim().slice(0, 30)}" to ${Math.round(el.getBoundingClientRect().right)} of ${wide}`);
  if (document.scrollingElement.scrollWidth > wide) out.push(`the page scrolls to ${document.scrollingElement.scrollWidth} of ${wide}`);
  return out;

  // Inside a part that scrolls by itself it may be wider.
  function scrolls(el) {
    for (let up = el.parentElement; up && up !== document.body; up = up.parentElement) {
      if (/auto|scroll/.test(getComputedStyle(up).overflowX)) return true;
    }
    return false;
  }
}

/** Text that is cut off where its box ends. */
export function cutOff() {
  return [...document.body.querySelectorAll('*')]
    .filter((el) => el.checkVisibility({ visibilityProperty: true }) && !el.closest('.unseen, .skip, svg') && !['INPUT', 'SELECT', 'TEXTAREA'].includes(el.tagName))
    .filter((el) => /hidden|clip/.test(getComputedStyle(el).overflow) && (el.scrollWidth > el.clientWidth + 1 || el.scrollHeight > el.clientHeight + 1))
    .map((el) => `${el.tagName.toLowerCase()}.${el.className} "${el.textContent.trim().slice(0, 40)}"`);
}

/** What a finger is to hit that is smaller than 48 by 48. A label counts with its box. */
export function smallTargets() {
  const all = 'button, a[href], input:not([type=hidden]), select, textarea, summary, [role=button], [role=tab], [role=switch], [tabindex="0"]';
  return [...document.querySelectorAll(all)]
    .filter((el) => el.checkVisibility({ visibilityProperty: true }) && !el.closest('.unseen, .skip') && el.type !== 'file')
    .map((el) => {
      const labels = [...(el.labels ?? [])].filter((label) => label.checkVisibility() && (el.type === 'checkbox' || el.type === 'radio'));
      const boxes = [el, ...labels].map((each) => each.getBoundingClientRect());
      const span = (from, to) => Math.max(...boxes.map((b) => b[to])) - Math.min(...boxes.map((b) => b[from]));
      return { el, wide: span('left', 'right'), high: span('top', 'bottom') };
    })
    .filter(({ wide, high }) => wide < 47.5 || high < 47.5)
    .map(({ el, wide, high }) => `${el.tagName.toLowerCase()} "${(el.getAttribute('aria-label') ?? el.textContent.trim()).slice(0, 40) || el.id}" ${el.dataset.test ?? ''} is ${Math.round(wide)} x ${Math.round(high)}`);
}

/** How much of the screen's height is taken by what stays in place. */
export function fixedHeight() {
  return [...document.querySelectorAll('body *')]
    .filter((el) => ['fixed', 'sticky'].includes(getComputedStyle(el).position) && el.checkVisibility({ visibilityProperty: true }) && !el.closest('.unseen, .skip, dialog'))
    .reduce((sum, el) => sum + el.getBoundingClientRect().height, 0);
}

/** Texts, by a selector, with less contrast than so much against what is behind them. */
export function faint(selector, least) {
  const canvas = new OffscreenCanvas(1, 1).getContext('2d', { willReadFrequently: true });
  const rgba = (color) => {
    canvas.clearRect(0, 0, 1, 1);
    canvas.fillStyle = color;
    canvas.fillRect(0, 0, 1, 1);
    const [r, g, b, a] = canvas.getImageData(0, 0, 1, 1).data;
    return [r, g, b, a / 255];
  };
  const over = ([r, g, b, a], [R, G, B]) => [r * a + R * (1 - a), g * a + G * (1 - a), b * a + B * (1 - a), 1];
  const light = ([r, g, b]) => {
    const [x, y, z] = [r, g, b].map((c) => (c / 255 <= 0.04045 ? c / 255 / 12.92 : ((c / 255 + 0.055) / 1.055) ** 2.4));
    return 0.2126 * x + 0.7152 * y + 0.0722 * z;
  };
  const dark = matchMedia('(prefers-color-scheme: dark)').matches;
  const behind = (el) => {
    const layers = [];
    for (let up = el; up; up = up.parentElement) {
      const color = rgba(getComputedStyle(up).backgroundColor);
      if (color[3] > 0) layers.push(color);
      if (color[3] === 1) break;
    }
    return layers.reverse().reduce((below, layer) => over(layer, below), dark ? [0, 0, 0, 1] : [255, 255, 255, 1]);
  };
  const clear = (el) => {
    let all = 1;
    for (let up = el; up; up = up.parentElement) all *= Number(getComputedStyle(up).opacity);
    return all;
  };
  const found = [];
  let looked = 0;
  for (const el of document.querySelectorAll(selector)) {
    if (!el.checkVisibility({ visibilityProperty: true }) || !el.textContent.trim()) continue;
    looked++;
    const back = behind(el);
    const color = rgba(getComputedStyle(el).color);
    const front = over([color[0], color[1], color[2], color[3] * clear(el)], back);
    const [a, b] = [light(front), light(back)].sort((x, y) => y - x);
    const contrast = (a + 0.05) / (b + 0.05);
    if (contrast < least) found.push(`${el.className || el.tagName} "${el.textContent.trim().slice(0, 30)}" ${contrast.toFixed(2)}:1`);
  }
  return { looked, found };
}

/** Text that looks like a figure, wherever it is. */
export const figures = '.figure, .step-figure, [data-test="total"], dd, .range, .times, .line-side, td, .takes-all';
