/**
 * Black on white, in sizes that are read at arm's length. A label is never cut: it keeps to one sheet, two to a
 * row, and its rows break between, not within. Lengths are millimetres, so that paper of either size fits.
 */
export const SHEET_STYLE = `@page { margin: 12mm; }
* { box-sizing: border-box; }
html { background: #ffffff; color: #000000; }
body { margin: 0 auto; max-width: 190mm; font: 11pt/1.35 "Liberation Sans", Arial, Helvetica, sans-serif; }
h1 { font-size: 20pt; line-height: 1.15; margin: 0 0 2mm; }
h2 { font-size: 14pt; margin: 5mm 0 1.5mm; break-after: avoid; }
p { margin: 0 0 2mm; }
.sheet + .sheet { break-before: page; }
table { border-collapse: collapse; width: 100%; line-height: 1.25; }
thead { display: table-header-group; }
tr { break-inside: avoid; }
th { font-size: 9.5pt; font-weight: normal; text-align: left; vertical-align: bottom; padding: 1mm 2mm 1mm 0; border-bottom: 0.6mm solid #000000; }
td, th { overflow-wrap: anywhere; }
td { vertical-align: baseline; padding: 1.2mm 2mm 1.2mm 0; border-bottom: 0.2mm solid #777777; }
.number { text-align: right; white-space: nowrap; }
.word, .lot, .day { white-space: nowrap; }
.lot { font-size: 15pt; font-weight: bold; line-height: 1.1; }
.sold { table-layout: fixed; }
.sold td { padding-top: 0.8mm; padding-bottom: 0.8mm; }
.lots { width: 12mm; }
.heads { width: 11mm; }
.origin { width: 37mm; }
.asks { width: 22mm; text-align: right; padding-left: 0; }
.latin { font-style: italic; }
.small { font-size: 9.5pt; }
p.small { margin: 0 0 1mm; }
.blank { width: 21mm; padding-left: 3mm; }
.whole { break-inside: avoid; margin-bottom: 3mm; }
.close td { padding-top: 0.8mm; padding-bottom: 0.8mm; }
.slim { font-size: 14pt; }
.write { display: block; border-bottom: 0.2mm solid #777777; height: 4.2mm; }
.sum td { border-bottom: 0; border-top: 0.6mm solid #000000; font-weight: bold; }
.tick { width: 8mm; }
.open { height: 9mm; }
.name { width: 48mm; color: #333333; }
.box { display: inline-block; width: 4.5mm; height: 4.5mm; border: 0.4mm solid #000000; }
.box.done { background: #000000; }
.row { padding-right: 0.4mm; display: flex; gap: 3mm; margin: 0 0 3mm; break-inside: avoid; }
.label { flex: 0 0 calc(50% - 1.5mm); min-width: 0; min-height: 54mm; border: 0.5mm solid #000000; padding: 1.6mm 3.5mm 1.8mm; break-inside: avoid; display: flex; flex-direction: column; overflow-wrap: anywhere; }
.label .top { display: flex; justify-content: space-between; align-items: baseline; gap: 3mm; border-bottom: 0.3mm solid #000000; padding-bottom: 1.2mm; margin-bottom: 1.6mm; }
.label .top .lot { font-size: 24pt; }
.label .top .many { font-size: 15pt; font-weight: bold; white-space: nowrap; }
.label .kind { font-size: 14pt; line-height: 1.15; font-weight: bold; margin-bottom: 1mm; }
.label .trade { font-size: 12pt; font-weight: normal; }
.label dl { margin: 0; display: grid; grid-template-columns: max-content minmax(0, 1fr); column-gap: 2.5mm; font-size: 10.5pt; line-height: 1.25; }
.label dt { color: #333333; }
.label dd { margin: 0; }
.label .foot { margin-top: auto; padding-top: 1.6mm; font-size: 9.5pt; display: flex; justify-content: space-between; align-items: baseline; gap: 3mm; }
.label .foot .ask { font-size: 14pt; font-weight: bold; white-space: nowrap; }
@media screen { body { padding: 8mm 4mm; } .sheet { margin-bottom: 14mm; } }
@media screen and (max-width: 130mm) { .row { flex-direction: column; } .blank { display: none; } .lots { width: 9mm; } .heads { width: 9mm; } .origin { width: 29mm; } .asks { width: 19mm; } table { font-size: 10pt; } }
`;
