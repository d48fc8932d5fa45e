/** The samples, and one bar under four tables, as they sound with their signs realised. */
import { describe, expect, it } from 'vitest';
import { add, compare, format, latest, type Time, ZERO } from '../../grammar/time';
import { perform } from '../../server/readings/perform';
import type { Performance, PerformedEvent } from '../../server/score/performance';
import { signTableByName } from '../../server/signs/tables';
import { scoreOf } from '../helpers/music';
import { eventsOfVoice, performed } from '../helpers/realised';
import { sampleAnalysis, sampleNames } from '../helpers/samples';

/** Stretches of time in which a voice has anything, note or silence: "0 to 5". */
function stretches(events: readonly PerformedEvent[]): string[] {
  const found: { from: Time; to: Time }[] = [];
  for (const { onset, duration } of events) {
    const end = add(onset, duration);
    const last = found.at(-1);
    if (last !== undefined && compare(onset, last.to) <= 0) last.to = latest(last.to, end);
    else found.push({ from: onset, to: end });
  }
  return found.map(({ from, to }) => `${format(from)} to ${format(to)}`);
}

const byVoice = ({ pieces, score }: Performance): readonly (readonly string[])[] =>
  pieces.flatMap(({ events }) =>
    score.environment.voices.map((_, voice) =>
      stretches(events.filter((event) => event.voice === voice && compare(event.duration, ZERO) > 0)),
    ),
  );

describe.each(sampleNames)('%s', (name) => {
  const analysis = sampleAnalysis(name);

  it.each([...analysis.choices])('loses no time in any voice when its signs are played: %s', (choice) => {
    const score = scoreOf(analysis, choice);
    expect(byVoice(perform(score))).toEqual(byVoice(perform(score, { ornaments: 'sign' })));
  });
});

describe('the allemande', () => {
  const score = scoreOf(sampleAnalysis('allemande.bent'), 'inegal');
  const dessus = score.environment.voices.findIndex(({ name }) => name === 'dessus');

  it('has in its first bars pincés with the leading note of d, and trills that stop on the dot', () => {
    const { events } = perform(score).pieces[0] ?? { events: [] };
    const inBar = (number: string): string[] =>
      events
        .filter((event) => event.voice === dessus && event.from[0].placed.bar.number === number && event.realised)
        .map(({ pitch, duration }) => `${pitch?.letter}${pitch?.alteration === 1 ? '#' : ''} ${format(duration)}`);
    expect(inBar('1')).toEqual([
      ...['d 1/56', 'c# 1/56', 'd 19/56'],
      ...['f 1/48', 'e 1/48', 'f 1/48', 'e 1/48', 'f 1/48', 'e 1/12'],
    ]);
  });

  it('is written, without signs, as it was', () => {
    const written = scoreOf(sampleAnalysis('allemande.bent'));
    expect(perform(written)).toEqual(perform(written, { ornaments: 'sign' }));
  });
});

/** One bar by a table, in print: its notes, then the citation of each sign that the table has. */
function byTable(table: string): string[] {
  const events = eventsOfVoice(
    performed({ lanes: ["8. d5'zz 16 c 4 b4'turn 2 c5'ca"], table, tempo: '4 at 60', form: 'print' }),
  );
  const rows = new Set(events.flatMap(({ realised }) => realised?.row ?? []));
  const cited = (signTableByName(table)?.rows ?? []).filter(({ label }) => rows.has(label));
  const notes = events.map(({ pitch, duration }) => `${pitch?.letter}${pitch?.octave}:${format(duration)}`);
  return [notes.join(' '), ...cited.map(({ label, citation }) => `${label}: ${citation}`)];
}

/** A trill, or beat, on a dotted quaver, and a turn on a crotchet, which all four begin with. */
const BEGINNING = 'd5:1/32 e5:1/32 d5:3/32 c5:1/16 c5:1/32 b4:1/32 a4:1/32 b4:5/32';

describe('one bar under four tables', () => {
  it('is four different realisations', () => {
    const all = ['anglebert-1689', 'purcell-1696', 'couperin-1713', 'rameau-1724'].map((table) => byTable(table)[0]);
    expect(new Set(all).size).toBe(4);
  });

  it('is, in 1689, trill, turn and pincé', () => {
    expect(byTable('anglebert-1689')).toEqual([
      `e5:1/32 ${BEGINNING} c5:1/32 b4:1/32 c5:7/16`,
      'Tremblement simple: Marques des agréments et leur signification, 1689, no. 1, from memory: equal notes that fill the value; their number belongs to the value printed',
      'Double cadence sans tremblement: Marques des agréments et leur signification, 1689, no. 7, as told in Grove, “Ornaments”',
      'Pincé: Marques des agréments et leur signification, 1689, no. 9, from memory',
    ]);
  });

  it('has, in 1696, a beat from below for the zigzag, and no comma', () => {
    expect(byTable('purcell-1696')).toEqual([
      `c5:1/32 ${BEGINNING.replace('e5', 'c5')} c5:1/2`,
      'Beat: Rules for Graces, 1696, from memory: “beat from the note or half note below, according to the key you play in”',
      'Mark for the turn: Rules for Graces, 1696, from memory',
    ]);
  });

  it('has, in 1713, a trill struck anew, and no comma', () => {
    expect(byTable('couperin-1713')).toEqual([
      `e5:1/32 ${BEGINNING} c5:1/2`,
      'Tremblement détaché: Explication des agrémens, et des signes, 1713, from memory',
      'Doublé: Explication des agrémens, et des signes, 1713, from memory',
    ]);
  });

  it('has, in 1724, a pincé of more strokes', () => {
    const [notes, ...cited] = byTable('rameau-1724');
    expect(notes).toBe(`e5:1/32 ${BEGINNING} c5:1/32 b4:1/32 c5:1/32 b4:1/32 c5:1/32 b4:1/32 c5:5/16`);
    expect(cited.slice(0, 2)).toEqual([
      'Cadence, drawn short: Table of 1724, taken over about 1731, from memory: the strokes last the whole value',
      'Doublé: Table of 1724, taken over about 1731, as told in Grove, “Ornaments”',
    ]);
    expect(cited[2]).toMatch(/^Pincé: Table of 1724/);
  });
});
