/**
 * A page that stands alone: no script, no other file, nothing from the network, which its policy forbids even
 * if a text from the journal asked for it. It is laid out for paper, A4 and US Letter alike, and read on a screen too.
 */
import { markup, type Markup } from './markup.ts';
import { SHEET_STYLE } from './html-style.ts';

/** What makes a page ours, and so one that may be written over. */
const OURS = '<meta name="generator" content="Tankside">';

/** Sections each begin on a sheet of their own. */
export function pageHtml(title: string, sections: readonly Markup[]): string {
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
${OURS}
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">
<meta name="viewport" content="width=device-width, initial-scale=1">
${markup`<title>${title}</title>`.text}
<style>
${SHEET_STYLE}</style>
</head>
<body>
${sections.map(({ text }) => text).join('\n')}
</body>
</html>
`;
}

/** True for a page that an earlier run wrote: only that may be written over. */
export function isOurPage(text: string): boolean {
  return text.startsWith('<!doctype html>') && text.slice(0, 200).includes(OURS);
}
