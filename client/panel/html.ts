/** The page of the score panel. */
import { l10n, type Uri, type Webview } from 'vscode';
import { framed, safe } from '../frame/frame';
import { keyStrip, playbackBar } from './playbackHtml';

export const panelHtml = (webview: Webview, extension: Uri): string =>
  framed(webview, extension, { name: 'panel', title: l10n.t('Engraved score'), body: body() });

const body = (): string => `<header>
<h1>${safe(l10n.t('Engraved score'))}</h1>
<nav id="pages" aria-label="${safe(l10n.t('Leaves of the source'))}"></nav>
<div role="toolbar" aria-label="${safe(l10n.t('View of the score'))}">
<button id="clefs" type="button" aria-pressed="false" aria-keyshortcuts="c">${safe(l10n.t('Modern clefs'))}</button>
<button id="ornaments" type="button" aria-keyshortcuts="s" data-sign="${safe(l10n.t('Signs as they stand'))}" data-above="${safe(l10n.t('Signs and what they mean'))}" data-full="${safe(l10n.t('Signs written out'))}" data-no-table="${safe(l10n.t('This reading has no table of signs.'))}"></button>
<button id="reading" type="button"></button>
<button id="drag" type="button" aria-pressed="false" hidden>${safe(l10n.t('Mark the system on the picture'))}</button>
<button id="weights" type="button" aria-pressed="false" hidden>${safe(l10n.t('Weights'))}</button>
<button id="note" type="button" aria-keyshortcuts="n">${safe(l10n.t('Sound the note'))}</button>
<button id="bar" type="button" aria-keyshortcuts="b">${safe(l10n.t('Sound the bar'))}</button>
</div>
<label>${safe(l10n.t('Beneath'))} <select id="beneath" data-none="${safe(l10n.t('nothing'))}"></select></label>
<label id="weight-field" hidden>${safe(l10n.t('Weight of the marked note'))} <input id="weight" type="range" min="1" max="9" step="1"></label>
${playbackBar()}
</header>
<section id="facsimile" aria-label="${safe(l10n.t('Picture of the source'))}" hidden></section>
<main id="score" tabindex="0" aria-label="${safe(l10n.t('Engraved page; the arrow keys go from note to note'))}"></main>
<details id="differences" hidden data-none="${safe(l10n.t('On this leaf the two readings are the same.'))}" data-one="${safe(l10n.t('1 difference on this leaf'))}" data-many="${safe(l10n.t('{0} differences on this leaf', '{0}'))}"><summary></summary><ol></ol></details>
${keyStrip()}
<footer id="status" aria-live="polite" data-no-picture="${safe(l10n.t('The picture of this leaf cannot be shown.'))}"></footer>`;
