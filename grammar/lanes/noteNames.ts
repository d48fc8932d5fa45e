/** Notes called as in German or by the syllables of solmisation, and what they are called here. */
import { source } from './patterns';

/** Syllables, to the letters of this notation; `fa` and `re` are also two signs run together. */
const syllables: Readonly<Record<string, string>> = {
  ut: 'c',
  do: 'c',
  re: 'd',
  mi: 'e',
  fa: 'f',
  sol: 'g',
  la: 'a',
  si: 'b',
};
const twoSigns = new Set(['re', 'fa']);

/** German endings, to accidentals; `es` and `as` have lost a vowel. */
const german = /^(?:(h)|([a-h])(isis|is)|([cdefga])(eses|es)|(e|a)(ses|sas|s))(?![a-z])/;
const endings: Readonly<Record<string, string>> = {
  is: '#',
  isis: '##',
  es: 'b',
  eses: 'bb',
  s: 'b',
  ses: 'bb',
  sas: 'bb',
};

const afterName = `(?:\\?)?(?:${source.tie})?(?:${source.mark}|${source.annotation}){0,6}$`;
const inSyllables = new RegExp(`^(${Object.keys(syllables).join('|')})(##|#|bb|b)?(\\d?)(${afterName})`);
const inGerman = new RegExp(`${german.source}\\d?${afterName}`);

/** A name that is no note here but one elsewhere, with what may follow a note. */
export const noteNamesElsewhere = {
  test: (text: string): boolean => inGerman.test(text) || inSyllables.test(text),
};

/** The note so called; it is sure where neither the octave is counted from elsewhere nor the name is two signs here. */
export function noteElsewhere(text: string): { readonly meant: string; readonly isSure: boolean } {
  const called = inSyllables.exec(text);
  if (called !== null) {
    const [, syllable = '', accidental = '', octave = '', after = ''] = called;
    return {
      meant: `${syllables[syllable]}${accidental}${octave}${after}`,
      isSure: octave === '' && !twoSigns.has(syllable),
    };
  }
  const meant = text.replace(german, (...parts: string[]) => {
    const [, h, sharp, sharps, flat, flats, bare, ending] = parts;
    const letter = h ?? sharp ?? flat ?? bare ?? '';
    return `${letter === 'h' ? 'b' : letter}${endings[sharps ?? flats ?? ending ?? ''] ?? ''}`;
  });
  return { meant, isSure: true };
}
