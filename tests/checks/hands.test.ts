/**
 * Hands and keys (common practice): a hand reaches an octave with ease and a ninth, rarely a tenth; it has five fingers. On a
 * short octave what counts is where keys lie: C to e is an octave of keys (Borys Medicky, keyboard layouts).
 */
import { describe, expect, it } from 'vitest';
import { duet, messages, passage } from '../helpers/music';

const ON = 'instrument harpsichord compass g1-d6\n';
const SHORT = 'instrument virginals compass c2-c6 short-octave c/e\n';

const stretches = (dessus: string, basse: string, on = ON): string[] =>
  messages(duet(dessus, basse, 'C', on), 'hand-stretch').map((message) =>
    message.slice(0, message.indexOf(' is wide') - 1),
  );
const counts = (dessus: string, basse: string): string[] => messages(duet(dessus, basse, 'C', ON), 'hand-full');

describe('two hands', () => {
  it('share any chord that some division makes easy', () => {
    expect(stretches('1 e5-c6', '1 c2-c3')).toEqual([]);
    // The middle notes go to whichever hand has room.
    expect(stretches('1 c4-c5', '1 c3-g3')).toEqual([]);
    expect(stretches('1 c4-e4-g4-c5', '1 c3-e3-g3-c4')).toEqual([]);
  });
  it('are told of more than a ninth in one of them, however it is shared', () => {
    expect(stretches('1 f5-c6', '1 f2-c3-a')).toEqual(['Bar 1: f2 with a3 in the left hand, a tenth']);
    expect(stretches('1 f5-c6', '1 f2-c3-g')).toEqual([]);
    expect(stretches('1 f5-c6', '1 c2-g2-f3')).toEqual(['Bar 1: c2 with f3 in the left hand, an eleventh']);
  });
  it('reach an eleventh where an arpeggio is signed', () => {
    expect(stretches('1 f5-c6', "1 c2-g2-f3'arp")).toEqual([]);
    expect(stretches('1 f5-c6', "1 c2-g2-a3'arp")).toHaveLength(1);
  });
  it('hold what sounds on from before', () => {
    expect(stretches('1 f5-c6', '2. f2-c3 4 c3')).toEqual([]);
    const held = passage(
      'system upper C1 lower F4 meter C\n  dessus | 1 f5-c6 |||\n  taille | 2 r a3 |||\n  basse | 1 f2-c3 |||\n',
      ON,
    );
    expect(messages(held, 'hand-stretch')[0]).toMatch(/^Bar 1: f2 with a3 in the left hand, a tenth,/);
  });
  it('are not told of what one stroke after the other can do', () => {
    expect(stretches('1 f5-c6', '2 f2-c3 a3')).toEqual([]);
  });
  it('find a tenth on C an octave of keys where the octave is short, one on F not', () => {
    expect(stretches('1 f5-c6', '1 c2-g2-e3', SHORT)).toEqual([]);
    expect(stretches('1 f5-c6', '1 c2-g2-e3')).toHaveLength(1);
    expect(stretches('1 f5-c6', '1 f2-c3-a', SHORT)).toHaveLength(1);
    // C to g, a twelfth, is a minor tenth of keys.
    expect(stretches('1 f5-c6', '1 c2-c3-g', SHORT)).toEqual([
      'Bar 1: c2 with g3 in the left hand, a twelfth, a tenth on the keys',
    ]);
  });
  it('take one key once for two voices', () => {
    expect(counts('1 c5-d-e-f-g', '1 c2-e-g-c3-e')).toEqual([]);
    expect(counts('1 c5-d-e-f-g-a', '1 c2-e-g-c3-e')).toHaveLength(1);
  });
  it('leave the lowest note to a pedal', () => {
    const pedal = 'instrument organ compass c2-c6\n  manual great stops 8\n  manual pedal stops 16\n';
    expect(stretches('1 f5-c6', '1 f2-c3-a', pedal)).toEqual([]);
  });
  it('are nobody’s business where no instrument is named', () => {
    expect(messages(duet('1 f5-c6', '1 f2-c3-a'), 'hand-stretch')).toEqual([]);
  });
});

describe('one key for two voices', () => {
  const held = (dessus: string, taille: string, on = ON): string[] =>
    messages(
      passage(`system upper C1 lower F4 meter C\n  dessus | ${dessus} |||\n  taille | ${taille} |||\n`, on),
      'key-still-held',
    );
  it('is one stroke where both begin', () => {
    expect(held('2 g4 a', '1 g4')).toEqual([]);
  });
  it('is told where one strikes what the other holds', () => {
    expect(held('1 g4', '2 e4 g')).toEqual([
      'Bar 1: taille strikes g4, which dessus holds: the held note ends there, or is struck again.',
    ]);
    expect(held('1 g4', '2 e4 f')).toEqual([]);
    expect(held('2 g4 a', '2 e4 g')).toEqual([]);
  });
  it('is one key by whatever name, unless it is divided', () => {
    expect(held('1 eb4', '2 c4 d#')).toHaveLength(1);
    expect(held('1 eb4', '2 c4 d#', 'instrument virginals compass c2-c6 split d#/eb\n')).toEqual([]);
  });
  it('is two keys on two manuals', () => {
    const two = 'instrument harpsichord compass g1-d6\n  manual upper stops 8\n  manual lower stops 8 4\n';
    expect(held('(manual upper) 1 g4', '(manual lower) 2 e4 g', two)).toEqual([]);
    expect(held('(manual upper) 1 g4', '(manual upper) 2 e4 g', two)).toHaveLength(1);
  });
});
