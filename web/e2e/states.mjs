// Every state of the page that is worth a look, each from a page just opened
// with nothing kept: for the rules of access and for the pictures.

const sample = async (phone) => {
  await phone.tap('start-sample');
  await phone.fresh();
  await phone.until(() => document.querySelector('.sure'), 'how sure it is, which comes last');
};
const place = (name) => async (phone) => {
  await sample(phone);
  await phone.tap(`place-${name}`);
};
export const states = {
  'start': async () => {},
  'empty-job': async (phone) => {
    await phone.tap('start-empty');
  },
  'choose-a-task': async (phone) => {
    await sample(phone);
    await phone.tap('add-task');
  },
  'new-fill': async (phone) => {
    await phone.tap('start-empty');
    await phone.tap('add-fill');
  },
  'job': sample,
  'task-open': async (phone) => {
    await sample(phone);
    await phone.reveal('tasks[2].layer');
  },
  'line-open': async (phone) => {
    await sample(phone);
    await phone.reveal('tasks[1].containers[0].count');
  },
  'offer-open': async (phone) => {
    await sample(phone);
    await phone.reveal('offers[0].price');
  },
  'problem': async (phone) => {
    await sample(phone);
    await phone.enter('tasks[2].layer', '3 inchs');
    await phone.page.keyboard.press('Tab');
    await phone.until(() => document.querySelector('[data-test="problem"]'), 'a problem at the field');
  },
  'working': async (phone) => {
    await sample(phone);
    await phone.tap('working');
  },
  'yard': place('yard'),
  'sold-out': async (phone) => {
    await place('yard')(phone);
    await phone.tap('sold-out', undefined, { inside: '[data-offer="bark-fines:1/2 cu yd bulk"]' });
    await phone.fresh();
    await phone.until(() => document.querySelector('[data-test="changes"] li'), 'what changed');
  },
  'price-open': async (phone) => {
    await place('yard')(phone);
    await phone.tap('[data-test="line"] .fold-button');
    await phone.until(() => document.querySelector('.line-fields input'), 'the price');
  },
  'ticked': async (phone) => {
    await place('yard')(phone);
    await phone.tap('tick');
    await phone.until(() => document.querySelector('[data-test="tick"]').checked, 'the tick');
  },
  'ground': place('ground'),
  'jobs': async (phone) => {
    await sample(phone);
    await phone.tap('menu');
  },
  'shared': async (phone) => {
    await sample(phone);
    await phone.tap('menu');
    await phone.tap('share');
    await phone.until(() => document.querySelector('[data-test="share-link"]')?.value, 'the link');
  },
  'deleted': async (phone) => {
    await sample(phone);
    await phone.tap('menu');
    await phone.tap('job-delete');
    await phone.until(() => document.querySelector('[data-test="job-undelete"]'), 'the way back');
  },
  'refused-file': async (phone) => {
    await phone.evaluate(() => {
      location.hash = '#job=not-a-job';
    });
    await phone.until(() => document.querySelector('[data-test="message"]'), 'what the page says');
  },
  'print-yard': async (phone) => {
    await print(phone, 'yard');
  },
  'print-ground': async (phone) => {
    await print(phone, 'ground');
  },
};

// The sheet stays while it is being printed.
async function print(phone, which) {
  await sample(phone);
  await phone.evaluate(() => {
    window.print = () => {};
  });
  await phone.tap('menu');
  await phone.tap(`print-${which}`);
  await phone.until((which) => document.querySelector(`[data-test="sheet-${which}"]`), 'the sheet', { args: [which] });
  await phone.page.emulateMediaType('print');
}
