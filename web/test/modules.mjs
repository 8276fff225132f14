import {readdirSync} from 'node:fs';

/** The page's folders, each above all that it may know. Places do not know one another. */
export const folders = ['text', 'store', 'state', 'ui', 'result', ['job', 'yard', 'bed'], 'shell', 'app'];

/** Every module of the page, as folder/name.js. */
export const modules = (end = '.js') => folders.flat().flatMap(folder => readdirSync(new URL(`../${folder}/`, import.meta.url)).filter(name => name.endsWith(end)).map(name => `${folder}/${name}`));
