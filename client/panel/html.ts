/** The frame of the panel's page. Nothing in it runs, or comes from anywhere, but the two files beside it. */
import { l10n, Uri, type Webview } from 'vscode';

export function panelHtml(webview: Webview, extension: Uri): string {
  const address = (file: string): string => webview.asWebviewUri(Uri.joinPath(extension, 'dist', file)).toString();
  const policy = [
    "default-src 'none'",
    `script-src ${webview.cspSource}`,
    `style-src ${webview.cspSource}`,
    'img-src blob:',
  ].join('; ');
  return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${l10n.t('Engraved score')}</title>
<link rel="stylesheet" href="${address('panel.css')}">
</head>
<body>
<header>
<h1>${l10n.t('Engraved score')}</h1>
<nav id="pages" aria-label="${l10n.t('Leaves of the source')}"></nav>
<div role="toolbar" aria-label="${l10n.t('View of the score')}">
<button id="clefs" type="button" aria-pressed="false" aria-keyshortcuts="c">${l10n.t('Modern clefs')}</button>
<button id="ornaments" type="button" aria-keyshortcuts="s" data-sign="${l10n.t('Signs as they stand')}" data-above="${l10n.t('Signs and what they mean')}" data-full="${l10n.t('Signs written out')}" data-no-table="${l10n.t('This reading has no table of signs.')}"></button>
<button id="reading" type="button"></button>
<button id="drag" type="button" aria-pressed="false" hidden>${l10n.t('Mark the system on the picture')}</button>
<button id="note" type="button" aria-keyshortcuts="n">${l10n.t('Sound the note')}</button>
<button id="bar" type="button" aria-keyshortcuts="b">${l10n.t('Sound the bar')}</button>
</div>
</header>
<section id="facsimile" aria-label="${l10n.t('Picture of the source')}" hidden></section>
<main id="score" tabindex="0" aria-label="${l10n.t('Engraved page; the arrow keys go from note to note')}"></main>
<footer id="status" aria-live="polite" data-no-picture="${l10n.t('The picture of this leaf cannot be shown.')}" data-no-sound="${l10n.t('Press “Sound the note” here once: until then the browser lets nothing sound.')}"></footer>
<script src="${address('panel.js')}"></script>
</body>
</html>`;
}
