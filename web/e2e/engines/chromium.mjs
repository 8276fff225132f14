import { Puppet } from './puppet.mjs';

export const binary = process.env.CHROMIUM ?? '/usr/bin/chromium';

export async function launch({ args = [], ...options } = {}) {
  return Chromium.launch('chromium', {
    executablePath: binary,
    headless: true,
    pipe: true,
    args: [
      '--no-sandbox',
      '--disable-gpu',
      '--disable-quic',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
      '--hide-scrollbars',
      ...args,
    ],
    ...options,
  });
}

class Chromium extends Puppet {
  async screenshot(file) {
    await this.page.screenshot({ path: file, fullPage: true });
  }
}
