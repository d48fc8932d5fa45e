/** How a teaching sheet looks: on a screen, light or dark, and on paper. */
import { STRINGS_STYLE } from '../stringsDrawing';
import { MUSIC_STYLE } from './inline';

export const SHEET_STYLE = `
.under { font-size: 12pt; margin-bottom: 4mm; }
.controls nav { display: flex; flex-wrap: wrap; gap: 1mm 5mm; margin-bottom: 2mm; }
a { color: inherit; }
h3 { font-size: 11.5pt; margin: 5mm 0 1.5mm; break-after: avoid; }
h4 { font-size: 10.5pt; margin: 4mm 0 1mm; break-after: avoid; }
cite { font-style: italic; }
figure { margin: 0 0 1mm; break-inside: avoid; }
figcaption { display: flex; align-items: baseline; gap: 4mm; }
figure > svg { background: #fff; padding: 1mm 0; }
button, select { font: inherit; color: #111; background: #fff; border: 0.3mm solid #555; border-radius: 1mm; padding: 0.5mm 3mm; }
button { cursor: pointer; white-space: nowrap; }
button:hover { background: #eee; }
:focus-visible { outline: 0.6mm solid #0b57d0; outline-offset: 0.5mm; }
.sounding { box-shadow: -2mm 0 0 0 #0b57d0; }
.unseen { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); white-space: nowrap; }
.line, .sign, .exercise, .laying { padding-top: 1mm; }
.line + .line, .sign + .sign, .exercise + .exercise { border-top: 0.2mm solid #999; }
.line h3, .line h4 { font-size: 10.5pt; margin: 1.5mm 0 1mm; }
.together, .exercise { break-inside: avoid; }
.together { margin-bottom: 3mm; }
.sign h3 + p { break-after: avoid; }
.reasons { margin: 1mm 0 0; padding-left: 5mm; font-size: 0.92em; }
.reading ul { margin: 0; padding-left: 5mm; }
.lines { clear: both; }
aside { float: right; width: 48mm; margin: 2mm 0 4mm 6mm; padding-left: 4mm; border-left: 0.4mm solid #111; font-size: 0.9em; }
.fork { font-size: 1.2em; }
dt { font-style: italic; }
dd { margin: 0 0 1mm; }
.blank { margin: 4mm 0 6mm; }
summary { cursor: pointer; margin-bottom: 2mm; }
.notes table { width: 100%; break-inside: auto; margin: 3mm 0 5mm; }
.notes th, .notes td { vertical-align: top; overflow-wrap: break-word; }
.notes tr { break-inside: avoid; border-bottom: 0.1mm solid #999; }
.caution { font-size: 0.92em; }
@media screen and (prefers-color-scheme: dark) {
  body { background: #1b1b1b; color: #eee; }
  h2, thead th, aside { border-color: #eee; }
  :focus-visible { outline-color: #8ab4f8; }
  .sounding { box-shadow: -2mm 0 0 0 #8ab4f8; }
  .strings { background: #fff; }
}
@media screen and (max-width: 130mm) { aside { float: none; width: auto; margin: 2mm 0; } }
@media print {
  .controls, button { display: none; }
  .sounding { box-shadow: none; }
  a { text-decoration: none; }
}
${MUSIC_STYLE}${STRINGS_STYLE}`;
