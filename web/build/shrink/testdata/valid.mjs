// Counts the modules N.before in a folder that an engine takes, and wants N.after
// to be one too: node valid.mjs DIR
import {readFileSync, readdirSync} from 'node:fs';
import {join} from 'node:path';

const [dir] = process.argv.slice(2);
const valid = name => WebAssembly.validate(readFileSync(join(dir, name)));
const was = readdirSync(dir).filter(name => name.endsWith('.before') && valid(name));
const spoilt = was.filter(name => !valid(name.replace('before', 'after')));
if (spoilt.length > 0) throw new Error(`no modules any more: ${spoilt}`);
console.log(was.length);
