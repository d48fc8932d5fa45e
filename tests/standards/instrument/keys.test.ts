/**
 * Which key sounds what, how many keys there are.
 *
 * Short octaves: Borys Medicky, keyboard layouts (borysmedicky.com/options); liquisearch.com/short_octave, the broken octave;
 * matthewjamesrichards.co.uk has its halves the other way about. Compasses: O'Brien's catalogue (docslib.org/doc/10723997);
 * Grove, first edition, vol. 2, p. 66 and vol. 3, p. 665; bigduck.com/configs.html; "Eight Ruckers pitches", abstract; the
 * others from memory.
 */
import { describe, expect, it } from 'vitest';
import { parseFile } from '../../../grammar/parse';
import { instrumentTypes } from '../../../grammar/vocabulary/instruments';
import { analyse } from '../../../server/document/analysis';
import {
  dividedKeys,
  type Instrument,
  instrumentOf,
  keyFor,
  manualsOf,
  octavesAway,
} from '../../../server/instrument/instrument';
import type { Environment } from '../../../server/score/environment';
import { scoreOf } from '../../helpers/music';

const environmentOf = (statement: string): Environment =>
  scoreOf(analyse('keys.bent', parseFile(`bentside 1\ninstrument ${statement}\n`))).environment;

function instrument(statement: string): Instrument {
  const found = instrumentOf(environmentOf(statement));
  if (found === undefined) throw new Error(`no compass in ${statement}`);
  return found;
}

/** `40>36`: the key that lies at 40 sounds 36; `f` and `b` of the front and back half of a divided key. */
const lowest = (statement: string, count: number): string =>
  [...instrument(statement).keys]
    .sort((a, b) => a.lies - b.lies || (a.half === 'front' ? -1 : 1))
    .slice(0, count)
    .map(({ lies, sounds, half }) => `${lies}${half?.[0] ?? ''}>${sounds}`)
    .join(' ');

describe('a short octave', () => {
  it('C/E sounds c, d, e from the keys of e, f sharp, g sharp', () => {
    expect(lowest('virginals compass c2-c6 short-octave c/e', 9)).toBe(
      '40>36 41>41 42>38 43>43 44>40 45>45 46>46 47>47 48>48',
    );
  });
  it('G/B sounds g, a, b from the keys of b, c sharp, d sharp', () => {
    expect(lowest('harpsichord compass g1-c6 short-octave g/b', 8)).toBe(
      '35>31 36>36 37>33 38>38 39>35 40>40 41>41 42>42',
    );
  });
  it('broken, has both notes on a divided sharp', () => {
    expect(lowest('harpsichord compass c2-c6 short-octave c/e broken', 8)).toBe(
      '40>36 41>41 42f>38 42b>42 43>43 44f>40 44b>44 45>45',
    );
    expect(lowest('harpsichord compass g1-c6 short-octave g/b broken', 8)).toBe(
      '35>31 36>36 37f>33 37b>37 38>38 39f>35 39b>39 40>40',
    );
  });
  it('may have them the other way about', () => {
    expect(lowest('harpsichord compass c2-c6 short-octave c/e broken back', 8)).toBe(
      '40>36 41>41 42f>42 42b>38 43>43 44f>44 44b>40 45>45',
    );
  });
  it('of C and E has the key of f to the left of the key that sounds e', () => {
    const short = instrument('virginals compass c2-c6 short-octave c/e');
    expect(keyFor(short, 41)?.lies).toBeLessThan(keyFor(short, 40)?.lies ?? 0);
  });
  it.each([
    ['c/e', '', [37, 39, 42, 44]],
    ['c/e', ' broken', [37, 39]],
  ])('%s%s lacks what it has no key for', (name, broken, lacking) => {
    const short = instrument(`virginals compass c2-c6 short-octave ${name}${broken}`);
    const notes = Array.from({ length: 49 }, (_, i) => 36 + i);
    expect(notes.filter((midi) => keyFor(short, midi) === undefined)).toEqual(lacking);
  });
  it('G/B lacks g sharp, b flat, c sharp and e flat', () => {
    const short = instrument('harpsichord compass g1-c6 short-octave g/b');
    const notes = Array.from({ length: 54 }, (_, i) => 31 + i);
    expect(notes.filter((midi) => keyFor(short, midi) === undefined)).toEqual([32, 34, 37, 39]);
  });
});

describe('types of instrument', () => {
  it.each([
    ['ruckers-single', 45],
    ['ruckers-double', 50],
    ['ruckers-ravale', 50],
    ['flemish-chromatic', 51],
    ['italian-c', 45],
    ['italian-c-f', 50],
    ['italian-g', 50],
    ['french-17th', 50],
    ['french-18th', 60],
    ['french-1760', 61],
    ['hitchcock-spinet', 61],
    ['kirkman', 60],
    ['clavichord-fretted', 45],
    ['clavichord-unfretted', 61],
    ['organ-c', 45],
    // Every key of the compass but one; 58 keys from GG to e3 as the list of compasses counts them.
    ['italian-g-a', 53],
    ['organ-c-d', 48],
    ['french-1700', 58],
    ['german-c', 49],
    ['german-f', 61],
    ['english-virginals', 49],
  ])('%s has %d keys', (name, keys) => {
    expect(instrument(name).keys).toHaveLength(keys);
  });
  it('are all counted above', () => {
    expect(instrumentTypes).toHaveLength(21);
  });
});

describe('an instrument', () => {
  it('gives a note by its key, and a key its note', () => {
    const short = instrument('virginals compass c2-c6 short-octave c/e broken');
    expect(keyFor(short, 38)).toEqual({ lies: 42, sounds: 38, half: 'front' });
    const given = (lies: number) => short.keys.filter((key) => key.lies === lies).map(({ sounds }) => sounds);
    expect([given(42), given(60)]).toEqual([[38, 42], [60]]);
  });
  it('lacks what it is said to lack, with a short octave or without', () => {
    const lacking = (statement: string, midi: number) => keyFor(instrument(statement), midi) === undefined;
    expect(lacking('harpsichord compass g1-e6 lacks g#1 bb1', 32)).toBe(true);
    expect(lacking('harpsichord compass g1-e6 lacks g#1 bb1', 34)).toBe(true);
    expect(lacking('harpsichord compass g1-e6 lacks g#1 bb1', 33)).toBe(false);
    expect(lacking('organ compass c2-c6 short-octave c/e broken lacks g#2', 44)).toBe(true);
    expect(lacking('kirkman lacks f6', 89)).toBe(true);
  });
  it('without a compass has every key', () => {
    expect(instrumentOf(environmentOf('harpsichord'))).toBeUndefined();
    expect(keyFor(undefined, 12)).toEqual({ lies: 12, sounds: 12 });
  });
  it('has the note an octave away that the compass lacks', () => {
    const chromatic = instrument('harpsichord compass c2-c6');
    expect(octavesAway(chromatic, 31)).toBe(1);
    expect(octavesAway(chromatic, 86)).toBe(-1);
    expect(octavesAway(chromatic, 22)).toBe(2);
    expect(octavesAway(chromatic, 2)).toBe(0);
  });
  it('has manuals with stops by their feet, of eight where nothing is said', () => {
    const two = environmentOf(
      'harpsichord compass g1-d6\n  manual upper stops 8\n  manual lower stops 8 4\n  manual third',
    );
    expect(manualsOf(two)).toEqual([
      { name: 'upper', stops: [8] },
      { name: 'lower', stops: [8, 4] },
      { name: 'third', stops: [8] },
    ]);
  });
  it('has divided keys by their two notes', () => {
    const pairs = dividedKeys(environmentOf('virginals compass c2-c6 split d#/eb g#/ab'));
    expect(pairs.map(([first, second]) => `${first.text} ${second.text}`)).toEqual(['d# eb', 'g# ab']);
  });
});
