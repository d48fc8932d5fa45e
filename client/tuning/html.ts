/** The page of the tuning panel. */
import { l10n, type Uri, type Webview } from 'vscode';
import { framed, safe } from '../frame/frame';

export const tuningHtml = (webview: Webview, extension: Uri): string =>
  framed(webview, extension, { name: 'tuning', title: l10n.t('Tuning'), body: body() });

const body = (): string => `<header>
<h1>${safe(l10n.t('Tuning'))}</h1>
<form id="choices" aria-label="${safe(l10n.t('What is to be tuned'))}">
<label>${safe(l10n.t('Tuning'))} <select id="wanted"></select></label>
<label>${safe(l10n.t('as it is typed'))} <input id="words" type="text" spellcheck="false" autocomplete="off"></label>
<label>${safe(l10n.t('a4 in hertz'))} <input id="pitch" type="number" min="300" max="600" step="any"></label>
<label>${safe(l10n.t('Pitch standard'))} <select id="standard" data-none="${safe(l10n.t('none of these'))}"></select></label>
<label>${safe(l10n.t('Tuned now'))} <select id="before"></select></label>
<button id="reading" type="button" data-says="${safe(l10n.t('Reading: {0}'))}"></button>
</form>
</header>
<main id="tuning" hidden>
<section id="chosen" aria-labelledby="title">
<h2 id="title"></h2>
<span id="under"></span>
<button id="write" type="button">${safe(l10n.t('Write this into the file'))}</button>
<span id="writes"></span>
<p id="beware" role="note"></p>
</section>
<section id="laying" aria-labelledby="steps-title">
<h2 id="steps-title"></h2>
<div id="now-box">
<p id="now" aria-live="polite"></p>
<div role="toolbar" aria-label="${safe(l10n.t('Steps'))}">
<button id="back" type="button" aria-keyshortcuts="ArrowUp">${safe(l10n.t('Back'))}</button>
<button id="on" type="button" aria-keyshortcuts="ArrowDown">${safe(l10n.t('Next'))}</button>
<button id="tempered" type="button" aria-keyshortcuts="t">${safe(l10n.t('Sound tempered'))}</button>
<button id="pure" type="button" aria-keyshortcuts="p">${safe(l10n.t('Sound pure'))}</button>
<button id="silent" type="button" aria-keyshortcuts="Escape">${safe(l10n.t('Silence'))}</button>
</div>
<p class="hint">${safe(l10n.t('Turn the volume down before you sound the first step, further still with earphones.'))}</p>
</div>
<ol id="steps" role="listbox" tabindex="0" aria-labelledby="steps-title"></ol>
<div id="strings">
<div id="drawing"></div>
<p class="hint">${safe(l10n.t('The open dot is the string that is heard, the full one that which is set. A whole line is pure, a broken one narrow, a dotted one wide. Strings that are not laid yet are broken, those of this step thick.'))}</p>
</div>
</section>
<section id="cautions" aria-label="${safe(l10n.t('Beware'))}"></section>
<section aria-labelledby="numbers-title">
<h2 id="numbers-title">${safe(l10n.t('The tuning in numbers'))}</h2>
<p>${safe(l10n.t('Unrest is the mean distance from pure, in cents, of the thirds on tonic, fourth and fifth.'))}</p>
<div id="tables"></div>
</section>
</main>
<footer id="status" aria-live="polite" data-no-sound="${safe(l10n.t('Press a button of this page once: until then the browser lets nothing sound.'))}" data-no-pitch="${safe(l10n.t('Give the a above middle C between 300 and 600 hertz.'))}"></footer>`;
