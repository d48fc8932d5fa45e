/**
 * Signs and small notes where a dot is a silence (`overdot double silent`): they go by what sounds, a note without a dot,
 * and by the notes on either side of the silence. Common practice; an appoggiatura has half of a note of two parts by
 * Türk, Klavierschule 1789, ch. III.
 */
import { expect, it } from 'vitest';
import { type Passage, played } from '../helpers/realised';

const silent = (lane: string, more: Partial<Passage> = {}): string =>
  played({
    lanes: [lane],
    table: 'anglebert-1689',
    tempo: '4 at 60',
    before: 'practice overdot double silent',
    ...more,
  });

/** The second half of the bar, the same in all. */
const END = 'e5:1/16 c5:1/2';

it('an appoggiatura has half of what sounds, with no silence in it', () => {
  expect(silent('{small 8 c5} 4. d5 8 e 2 c')).toBe(`c5:1/8 d5:1/8 r:3/16 ${END}`);
});

it('a turn after the note fills its second half, for no dot is left to stand on', () => {
  expect(silent("4. d5'turn(after) 8 e 2 c")).toBe(`d5:1/8 e5:1/32 d5:1/32 c5:1/32 d5:1/32 r:3/16 ${END}`);
});

it('a trill stands in the end on a quarter of what sounds, as on a crotchet', () => {
  const trill = silent("4. d5'zz 8 e 2 c", { table: 'chambonnieres-1670', form: 'print' });
  expect(trill).toBe(`e5:1/32 d5:1/32 e5:1/32 d5:1/32 e5:1/32 d5:3/32 r:3/16 ${END}`);
});

/** Where the shortest figure is a quaver it keeps its length, and its sign. */
const SHORTEST = 'practice overdot shortest';

it('a sign on the short note rises from the note before the silence, and one before it to the short note', () => {
  const house = (when: string): string =>
    ['table house', `  cb when ${when} : on beat, -1 for 1/2, 0`, `${SHORTEST} silent`].join('\n');
  expect(silent("4. d5 8 e'cb 2 c", { table: 'house', before: house('rising') })).toBe(
    'd5:1/4 r:1/8 d5:1/16 e5:1/16 c5:1/2',
  );
  expect(silent("4. d5'cb 8 e 2 c", { table: 'house', before: house('before higher') })).toBe(
    'c5:1/8 d5:1/8 r:1/8 e5:1/8 c5:1/2',
  );
});

it('a key that has come up is struck again, whatever curve leads over the silence', () => {
  const house = 'table house\n  tr : on beat, +1 for 1/2, 0';
  const short = (dot: string): string =>
    silent("4. e5'u 8 d'tr'. 2 c", { table: 'house', before: `${house}\n${SHORTEST} ${dot}` });
  expect(short('held')).toBe('e5:7/16 d5:1/16 c5:1/2');
  expect(short('silent')).toBe('e5:1/4 r:1/8 e5:1/16 d5:1/16 c5:1/2');
});

it('what comes before the beat is played in the silence, and takes nothing from the note', () => {
  const before = `table house\n  sbu : before beat, -1 at 32, 0\n${SHORTEST} silent`;
  expect(silent("4. d5 8 e'sbu 2 c", { table: 'house', before })).toBe('d5:1/4 r:3/32 d5:1/32 e5:1/8 c5:1/2');
});

it('an appoggiatura takes the whole of a note before a rest of the page alone, not before the silence of a dot after it', () => {
  const before = (next: string): string =>
    silent(`4 g4 8 g {small 8 d5} 8 c5 ${next}`, { table: 'quantz-1752' }).replace('g4:1/4 g4:1/8 ', '');
  expect(before('4 r r')).toBe('d5:1/8 c5:1/8 r:1/8 r:1/4');
  expect(before('4. b4 8 c5')).toBe('d5:1/16 c5:1/16 b4:1/4 r:3/16 c5:1/16');
});
