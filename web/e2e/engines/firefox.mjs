import { folder } from './children.mjs';
import { Puppet } from './puppet.mjs';

export const binary = process.env.FIREFOX ?? '/usr/bin/firefox-esr';

export async function launch({ ...options } = {}) {
  return Firefox.launch('firefox', {
    browser: 'firefox',
    executablePath: binary,
    headless: true,
    env: { ...process.env, HOME: folder('firefox-home') },
    ...options,
    // Over WebDriver BiDi the density of the screen is not to be set.
    viewport: { width: 360, height: 740, ...options.viewport },
  });
}

class Firefox extends Puppet {
  async screenshot(file) {
    await this.page.screenshot({ path: file });
  }
}
