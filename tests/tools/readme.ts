/** `npm run readme`: writes the README's screens anew. */
import { readFileSync, writeFileSync } from 'node:fs';
import { withScreens } from '../support/readme.ts';

writeFileSync('README.md', await withScreens(readFileSync('README.md', 'utf8')));
