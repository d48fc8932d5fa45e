/** The bar of playing and the strip of keys in the panel's page. */
import { l10n } from 'vscode';
import { safe } from '../frame/frame';

/** Texts that the page says, by their names in its data. */
const texts = (): Readonly<Record<string, string>> => ({
  play: l10n.t('Play'),
  stop: l10n.t('Stop'),
  nothing: l10n.t('There is nothing to be played here.'),
  silent: l10n.t('Press “Play” here once: until then the browser lets nothing sound.'),
  assumed: l10n.t('not stated, and so assumed: {0}', '{0}'),
  free: l10n.t('Music without measure is played in one of many possible ways.'),
});

const data = (all: Readonly<Record<string, string>>): string =>
  Object.entries(all)
    .map(([name, text]) => ` data-${name}="${safe(text)}"`)
    .join('');

const option = (value: string, text: string, isChosen = false): string =>
  `<option value="${value}"${isChosen ? ' selected' : ''}>${safe(text)}</option>`;

/** One of the two that are heard by turns. */
const side = (name: 'a' | 'b'): string => {
  const letter = name.toUpperCase();
  return `<fieldset><legend>${letter}</legend>
<label>${safe(l10n.t('Reading'))} <select id="reading-${name}"></select></label>
<label>${safe(l10n.t('Tuning'))} <select id="tuning-${name}" data-own="${safe(l10n.t('of the reading'))}"></select></label>
</fieldset>`;
};

const sideButton = (name: 'a' | 'b', title: string): string =>
  `<button id="side-${name}" type="button" aria-pressed="${name === 'a'}" aria-keyshortcuts="a" title="${safe(title)}">${name.toUpperCase()}</button>`;

export const playbackBar = (): string => `<section id="playback" aria-label="${safe(l10n.t('Playing'))}">
<button id="play" type="button" aria-keyshortcuts="p"${data(texts())}>${safe(l10n.t('Play'))}</button>
<span role="group" aria-label="${safe(l10n.t('Which of the two is heard'))}">
${sideButton('a', l10n.t('Hear A'))}
${sideButton('b', l10n.t('Hear B, at the same place'))}
</span>
<label>${safe(l10n.t('Tempo'))} <select id="pace">
${option('1', l10n.t('as stated'), true)}${option('0.75', l10n.t('three quarters'))}${option('0.5', l10n.t('half'))}
</select></label>
<label>${safe(l10n.t('Loudness'))} <input id="volume" title="${safe(l10n.t('Begin softly: what is too loud for long harms the ear.'))}" type="range" min="0" max="100" value="60"></label>
<details><summary>${safe(l10n.t('What is played'))}</summary>
<label>${safe(l10n.t('Begin at'))} <select id="from">
${option('note', l10n.t('the marked note'), true)}${option('bar', l10n.t('its bar'))}${option('leaf', l10n.t('the top of the leaf'))}
</select></label>
<span role="group" aria-label="${safe(l10n.t('Loop'))}">
<button id="loop" type="button" aria-pressed="false" aria-keyshortcuts="l">${safe(l10n.t('Loop'))}</button>
<label>${safe(l10n.t('from bar'))} <input id="loop-from" size="4" autocomplete="off"></label>
<label>${safe(l10n.t('to bar'))} <input id="loop-to" size="4" autocomplete="off"></label>
</span>
<span id="voices" role="group" aria-label="${safe(l10n.t('Voices that sound'))}"></span>
${side('a')}
${side('b')}
</details>
</section>`;

const keyTexts = (): Readonly<Record<string, string>> => ({
  // One letter on a key: left hand, right hand, feet.
  left: l10n.t('L'),
  right: l10n.t('R'),
  feet: l10n.t('F'),
  compass: l10n.t('Keys from {0} to {1}', '{0}', '{1}'),
  short: l10n.t('these sound other notes than their own'),
  lies: l10n.t('{0} on the key of {1}', '{0}', '{1}'),
});

export const keyStrip = (): string =>
  `<section id="keys" aria-label="${safe(l10n.t('Keys that are down, and by which hand'))}"${data(keyTexts())}></section>`;
