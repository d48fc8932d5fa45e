/** From a token to an argument: one reader for each thing that a writer can fill in. */
import type { Fix, Problem } from '../findings/finding';
import { replacing } from '../findings/fixes';
import { spellingOf, valueFormOf as valueForm } from '../lanes/forms';
import { modulo } from '../modulo';
import type { Argument, NamePart, Span, Spelling } from '../tree';
import { agreeingLine, clefMeant, clefOf, clefsAgree, clefText, looksLikeClef, MOST_LINES } from '../vocabulary/clefs';
import { MOST_BEATS, meterOf, possibleMeter, SMALLEST_BEAT } from '../vocabulary/meters';
import { isName, isReserved, type NameRole, nameMeant, readsAsNoteOrClef } from '../vocabulary/names';
import type { FreePart, Take } from '../vocabulary/parts';
import { semitonesOf } from '../vocabulary/pitches';
import type { Token } from './lexer';

/** Files a problem at a place; nothing it calls fails. */
export type Report = (code: Problem['code'], at: Span, slots: Problem['slots'], fixes?: readonly Fix[]) => void;

export interface Reader {
  /** Whether the token is meant for this reader, well written or not. */
  accepts(token: Token, part: FreePart): boolean;
  /** The argument; undefined where there is none, and then it has been reported. */
  read(token: Token, part: FreePart, report: Report): Argument | undefined;
}

/** The greatest number in a ratio or proportion. */
const MOST_IN_RATIO = 99;

const span = ({ pos, len }: Span): Span => ({ pos, len });
const isWord = (token: Token): boolean => token.kind === 'word';
/** Begins as a name begins, so that it is a name with a slip in it and nothing else. */
const startsAsName = (token: Token): boolean => isWord(token) && /^\p{L}/u.test(token.text);

const notThat = (token: Token, part: FreePart, report: Report, fixes = otherSpellings(token, part)): undefined => {
  report('wrong-argument', token, { word: token.text, expected: part.what }, fixes);
  return undefined;
};

/** Whether a part takes a token without a finding. */
export function takes(part: FreePart, token: Token): boolean {
  const reader = readers[part.take];
  let isClean = true;
  const report = (): void => {
    isClean = false;
  };
  return reader.accepts(token, part) && reader.read(token, part, report) !== undefined && isClean;
}

/** The pitch standard in short: `a`, `A4`, or its number alone. */
function pitchStandard(text: string): string {
  return decimal.test(text) ? `a4 = ${text}` : text.replace(/^a\d?$/i, 'a4');
}

/** What a part would take instead: without quotes, in small letters, a number without its unit. */
export function otherSpellings(token: Token, part: FreePart): readonly Fix[] {
  const { text } = token;
  const bare: Token = { ...token, kind: 'word' };
  const spelt = [text, text.toLowerCase(), text.replace(/^(\d+(?:\.\d+)?)[^\d.]\D*$|^(\d+)\.$/, '$1$2')];
  const meant = spelt.find((one) => (one !== text || token.kind !== 'word') && takes(part, { ...bare, text: one }));
  if (meant !== undefined) return [replacing(token, meant)];
  const standard = part.take === 'pitchOfA' ? pitchStandard(text) : text;
  return standard === text ? [] : [replacing(token, standard)];
}

// ─── names and strings ───────────────────────────────────────────────────────────────────────────────────────────

/** Names of shapes are the only ones of which the vocabulary does not say what they stand for. */
const roleOf = (part: FreePart): NameRole => part.role ?? 'shape';

function checkName(text: string, at: Span, part: FreePart, report: Report): void {
  const role = roleOf(part);
  if (role === 'layer' && !isName(text, role)) report('wrong-argument', at, { word: text, expected: part.what });
  else if (!isName(text, role)) report('bad-name', at, { word: text, expected: part.what }, namesMeant(text, at, part));
  else if (part.declares && isReserved(text, role)) report('reserved-name', at, { word: text, expected: part.what });
  else if (part.declares && role === 'stave' && readsAsNoteOrClef(text)) report('stave-like-note', at, { word: text });
}

/** Names that a comma parts where white space should, or a name with its accents and hyphens. */
function namesMeant(text: string, at: Span, part: FreePart): readonly Fix[] {
  const role = roleOf(part);
  const isList = part.repeat && part.take === 'name' && text.split(',').every((name) => isName(name, role));
  const meant = isList ? text.replaceAll(',', ' ') : nameMeant(text, role);
  return meant === undefined ? [] : [replacing(at, meant)];
}

/** Where a stave may be named or left out, what reads as a note, a clef or a word of the head is not its name. */
const isNoStave = (text: string): boolean => readsAsNoteOrClef(text) || isReserved(text, 'stave');

const nameReader: Reader = {
  accepts: (token, part) =>
    startsAsName(token) && (part.declares === true || part.role !== 'stave' || !isNoStave(token.text)),
  read(token, part, report) {
    checkName(token.text, token, part, report);
    return { kind: 'name', text: token.text, role: roleOf(part), declares: part.declares ?? false, ...span(token) };
  },
};

function listReader(separator: string): Reader {
  return {
    accepts: startsAsName,
    read(token, part, report) {
      const names: NamePart[] = [];
      let pos = token.pos;
      for (const text of token.text.split(separator)) {
        const name = { text, pos, len: text.length };
        checkName(text, text === '' ? token : name, part, report);
        names.push(name);
        pos += text.length + separator.length;
      }
      return { kind: 'names', names, role: roleOf(part), ...span(token) };
    },
  };
}

const stringReader: Reader = {
  accepts: (token, part) => token.kind === 'string' || (!part.optional && isWord(token)),
  read(token, _part, report) {
    if (token.kind !== 'string') {
      const fix = { title: 'put it in quotes', edits: [{ ...span(token), text: `"${token.text}"` }] };
      report('needs-quotes', token, { word: token.text }, [fix]);
    }
    return { kind: 'string', text: token.text, ...span(token) };
  },
};

// ─── numbers ─────────────────────────────────────────────────────────────────────────────────────────────────────

function numberReader(pattern: RegExp): Reader {
  return {
    accepts: (token) => isWord(token) && /^\d/.test(token.text),
    read(token, part, report) {
      if (!pattern.test(token.text)) return notThat(token, part, report);
      const value = Number(token.text);
      const { low, high } = part.range ?? { low: 0, high: Number.MAX_SAFE_INTEGER };
      if (value < low || value > high) {
        report('number-out-of-range', token, { word: token.text, what: part.what, low, high });
        return undefined;
      }
      return { kind: 'number', value, text: token.text, ...span(token) };
    },
  };
}

const ratioPattern = /^([+-]?)(\d{1,9})([/:])(\d{1,9})$/;

interface RatioRule {
  readonly separator: '/' | ':';
  /** Whether a sign must stand before it, or must not. */
  readonly signed: boolean;
  readonly possible: (n: number, d: number) => boolean;
}

const withinRatio = (n: number, d: number): boolean => n >= 1 && d >= 1 && n <= MOST_IN_RATIO && d <= MOST_IN_RATIO;

/** Whether a ratio is written at all, so that a slip in it can be told from another word. */
const looksLikeRatio = (token: Token): boolean => isWord(token) && /^[+-]?\d+[/:]\d+$/.test(token.text);

function ratioReader(rule: RatioRule, outOfRange: 'ratio-out-of-range' | 'bar-out-of-range'): Reader {
  return {
    accepts: looksLikeRatio,
    read(token, part, report) {
      const match = ratioPattern.exec(token.text);
      const [, sign = '', first = '', separator, second = ''] = match ?? [];
      if (match === null) return notThat(token, part, report);
      if ((sign !== '') !== rule.signed) {
        const bare = token.text.slice(sign.length);
        const meant = rule.signed ? [`-${bare}`, `+${bare}`] : [bare];
        return notThat(
          token,
          part,
          report,
          meant.map((text) => replacing(token, text)),
        );
      }
      if (separator !== rule.separator) {
        const meant = `${sign}${first}${rule.separator}${second}`;
        return notThat(token, part, report, [replacing(token, meant)]);
      }
      const [n, d] = [Number(first), Number(second)];
      if (!rule.possible(n, d)) {
        report(outOfRange, token, {
          word: token.text,
          most: MOST_IN_RATIO,
          smallest: SMALLEST_BEAT,
          beats: MOST_BEATS,
        });
        return undefined;
      }
      return { kind: 'ratio', sign: sign as '' | '+' | '-', n, d, ...span(token) };
    },
  };
}

/** Left, top, width and height. */
const regionReader: Reader = {
  accepts: (token) => isWord(token) && /^\d/.test(token.text),
  read(token, part, report) {
    const numbers = token.text.split(',');
    if (numbers.length !== 4 || !numbers.every((n) => /^\d{1,7}$/.test(n))) return notThat(token, part, report);
    return { kind: 'region', numbers: numbers.map(Number), ...span(token) };
  },
};

// ─── values, pitches, meters, clefs ──────────────────────────────────────────────────────────────────────────────

const valueReader: Reader = {
  accepts: (token) => isWord(token) && valueForm(token.text) !== undefined,
  read(token, part, report) {
    const form = valueForm(token.text);
    const plain = form?.duration !== undefined && form.proportion === undefined && !form.doubtful;
    return plain ? { kind: 'value', form, ...span(token) } : notThat(token, part, report);
  },
};

/** The note written, if it is one that a statement can cite: nothing editorial or doubtful about it. */
function plainSpelling(text: string): Spelling | undefined {
  const spelling = spellingOf(text);
  const plain = spelling?.editors === undefined && spelling?.cautionary === undefined && !spelling?.doubtful;
  return plain ? spelling : undefined;
}

function pitchReader(fits: (spelling: Spelling) => boolean): Reader {
  return {
    accepts: (token) => isWord(token) && spellingOf(token.text) !== undefined,
    read(token, part, report) {
      const spelling = plainSpelling(token.text);
      if (spelling === undefined || !fits(spelling)) return notThat(token, part, report);
      return { kind: 'pitch', spelling, ...span(token) };
    },
  };
}

function pairReader(separator: '-' | '/', fits: (first: Spelling, second: Spelling) => boolean): Reader {
  return {
    accepts: (token) => isWord(token) && /^[a-g][^-/]*[-/]/.test(token.text),
    read(token, part, report) {
      const [first = '', second = '', ...more] = token.text.split(separator);
      const [low, high] = [plainSpelling(first), plainSpelling(second)];
      if (low === undefined || high === undefined || more.length > 0 || !fits(low, high)) {
        return notThat(token, part, report);
      }
      return { kind: 'pair', first: low, second: high, ...span(token) };
    },
  };
}

const bothOctaves = (a: Spelling, b: Spelling): boolean => a.octave !== undefined && b.octave !== undefined;
const noOctaves = (a: Spelling, b: Spelling): boolean => a.octave === undefined && b.octave === undefined;
const FIFTH = 7;

const isCompass = (a: Spelling, b: Spelling): boolean => bothOctaves(a, b) && semitonesOf(a) < semitonesOf(b);
const isFifth = (a: Spelling, b: Spelling): boolean =>
  (bothOctaves(a, b) || noOctaves(a, b)) && modulo(semitonesOf(b) - semitonesOf(a), 12) === FIFTH;
const isOneKey = (a: Spelling, b: Spelling): boolean =>
  noOctaves(a, b) && a.letter !== b.letter && modulo(semitonesOf(a), 12) === modulo(semitonesOf(b), 12);

/** A sign with no usual length is the driver's to judge: it sees whether `= 3/2` follows. */
const meterReader: Reader = {
  accepts: isWord,
  read(token) {
    return { kind: 'word', text: token.text, ...span(token) };
  },
};

export const hasUsualLength = (sign: string): boolean => meterOf(sign) !== undefined;

const clefReader: Reader = {
  accepts: (token) => isWord(token) && looksLikeClef(token.text),
  read(token, part, report) {
    const clefs = token.text.split('+').map(clefOf);
    const [first, second, ...more] = clefs;
    if (first === undefined || clefs.includes(undefined) || more.length > 0) {
      const meant = clefMeant(token.text);
      return notThat(token, part, report, meant === undefined ? [] : [replacing(token, meant)]);
    }
    if (second !== undefined && !clefsAgree(first, second)) {
      const line = agreeingLine(second, first);
      const meant = `${clefText(first)}+${second.letter}${line}`;
      const fixes = line >= 1 && line <= MOST_LINES && line !== first.line ? [replacing(token, meant)] : [];
      report('clefs-disagree', token, { first: clefText(first), second: clefText(second) }, fixes);
    }
    return { kind: 'clef', clefs: second === undefined ? [first] : [first, second], ...span(token) };
  },
};

// ─── the table ───────────────────────────────────────────────────────────────────────────────────────────────────

const whole = /^\d{1,9}$/;
const decimal = /^\d{1,9}(?:\.\d{1,6})?$/;

export const readers: Readonly<Record<Take, Reader>> = {
  name: nameReader,
  names: listReader(','),
  shapes: listReader('+'),
  string: stringReader,
  whole: numberReader(whole),
  decimal: numberReader(decimal),
  value: valueReader,
  pitch: pitchReader((pitch) => pitch.octave !== undefined),
  keySign: pitchReader((pitch) => pitch.accidental !== undefined),
  pitchOfA: pitchReader((pitch) => pitch.text === 'a4'),
  meter: meterReader,
  barLength: ratioReader({ separator: '/', signed: false, possible: possibleMeter }, 'bar-out-of-range'),
  shares: ratioReader({ separator: ':', signed: false, possible: withinRatio }, 'ratio-out-of-range'),
  commaPart: ratioReader({ separator: '/', signed: false, possible: withinRatio }, 'ratio-out-of-range'),
  tempering: ratioReader({ separator: '/', signed: true, possible: withinRatio }, 'ratio-out-of-range'),
  clef: clefReader,
  region: regionReader,
  compass: pairReader('-', isCompass),
  fifth: pairReader('-', isFifth),
  splitKey: pairReader('/', isOneKey),
};
