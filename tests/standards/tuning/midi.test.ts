/**
 * Tunings as MIDI messages against the MIDI Tuning Standard.
 *
 * The frequency data: MIDI 1.0 Detailed Specification 4.2.1, p. 48. Older printings have errors, noted beside the value: those
 * rows give what the bytes mean, computed from 440 × 2^((xx + yyzz/16384 − 69)/12). Messages: the same specification, and its
 * extensions CA-020 (midi.org/about-midi/tuning_extens.shtml) and CA-021 (midi.org/about-midi/tuning-scale.shtml); that the
 * checksum is the exclusive or of all bytes between F0 and itself: the summary of the standard in the documents of TiMidity.
 */
import { describe, expect, it } from 'vitest';
import { bulkDump, frequencyData, pitchBend, scaleOctave, singleNotes } from '../../../server/export/midi/tuning';
import { frequencyOf } from '../../../server/tuning/tuning';
import { hertzOf } from '../../helpers/smf';
import { tunedTo } from '../../helpers/tuned';

const hex = (bytes: readonly number[]): string =>
  bytes.map((byte) => byte.toString(16).toUpperCase().padStart(2, '0')).join(' ');
const bytesOf = (text: string): number[] => text.split(' ').map((byte) => Number.parseInt(byte, 16));

describe('frequency data', () => {
  it.each([
    ['00 00 00', 8.175799, ''],
    ['00 00 01', 8.175828, 'printed 8.2104, an error'],
    ['01 00 00', 8.661957, ''],
    ['0C 00 00', 16.351598, ''],
    ['3C 00 00', 261.625565, ''],
    ['3D 00 00', 277.182631, 'printed 277.1827'],
    ['44 7F 7F', 439.998449, ''],
    ['45 00 00', 440, 'one printing has 43 00 00, a misprint'],
    ['45 00 01', 440.001551, ''],
    ['78 00 00', 8372.01809, 'printed 8372.0190'],
    ['78 00 01', 8372.047605, 'printed 8372.0630, inexact'],
    ['7F 00 00', 12543.853951, 'printed 12543.8800, inexact'],
    ['7F 00 01', 12543.898175, 'printed 12543.9200, inexact'],
    ['7F 7F 7E', 13289.656616, 'printed 13289.7300, inexact'],
  ])('%s is %d hertz, and back', (bytes, hertz) => {
    expect(hertzOf(bytesOf(bytes))).toBeCloseTo(hertz, 6);
    expect(hex(frequencyData(hertz))).toBe(bytes);
  });
  it('never says 7F 7F 7F, which would mean no change', () => {
    expect(hex(frequencyData(20000))).toBe('7F 7F 7E');
    expect(hex(frequencyData(1))).toBe('00 00 00');
  });
  it.each([
    ['c', '3C 0D 12'],
    ['c#', '3C 6E 3E'],
    ['d', '3E 04 31'],
    ['eb', '3F 1A 24'],
    ['e', '3F 7B 4F'],
    ['f', '41 11 42'],
    ['f#', '41 72 6E'],
    ['g', '43 08 61'],
    ['g#', '43 6A 0D'],
    ['a', '45 00 00'],
    ['bb', '46 15 73'],
    ['b', '46 77 1F'],
  ])('of quarter-comma meantone at 440: %s4 is %s', (note, bytes) => {
    const alteration = note.endsWith('#') ? 1 : note.length > 1 ? -1 : 0;
    const pitch = { letter: note[0] as 'c', alteration, octave: 4 };
    expect(hex(frequencyData(frequencyOf(tunedTo('meantone 1/4'), pitch)))).toBe(bytes);
  });
});

/** The length of a system exclusive message of a file stands after its F0, in bytes of seven bits. */
const unlengthed = (message: readonly number[]): number[] => {
  const length = message.findIndex((byte, index) => index > 0 && byte < 0x80);
  return [0xf0, ...message.slice(length + 1)];
};

describe('tuning messages', () => {
  const equal = Array.from({ length: 128 }, (_, key) => 440 * 2 ** ((key - 69) / 12));

  it('dump all keys, 408 bytes with a name of sixteen letters and a checksum', () => {
    const dump = unlengthed(bulkDump(3, 'vallotti', equal));
    expect(dump).toHaveLength(408);
    expect(hex(dump.slice(0, 6))).toBe('F0 7E 7F 08 01 03');
    expect(String.fromCharCode(...dump.slice(6, 22))).toBe('vallotti        ');
    expect(hex(dump.slice(22 + 3 * 69, 22 + 3 * 70))).toBe('45 00 00');
    expect(dump.at(-1)).toBe(0xf7);
    // The exclusive or of all bytes between F0 and the checksum, its highest bit left out.
    expect(dump.at(-2)).toBe(dump.slice(1, -2).reduce((sum, byte) => sum ^ byte, 0) & 0x7f);
    expect(dump.slice(1, -1).every((byte) => byte < 0x80)).toBe(true);
  });
  it('change single keys in real time', () => {
    const [message, ...more] = singleNotes(1, [
      [60, 261.625565],
      [69, 440],
    ]);
    expect(hex(unlengthed(message ?? []))).toBe('F0 7F 7F 08 02 01 02 3C 3C 00 00 45 45 00 00 F7');
    expect(more).toEqual([]);
    expect(
      singleNotes(
        0,
        equal.map((hertz, key) => [key, hertz] as const),
      ),
    ).toHaveLength(2);
  });
  it('tune the keys of an octave by two bytes each, 2000h being none, 8192 units a semitone', () => {
    const cents = [0, 100, -100, 50, -50, 0, 0, 0, 0, 0, 0, 1];
    expect(hex(unlengthed(scaleOctave('fine', cents)))).toBe(
      'F0 7F 7F 08 09 03 7F 7F 40 00 7F 7F 00 00 60 00 20 00 40 00 40 00 40 00 40 00 40 00 40 00 40 52 F7',
    );
  });
  it('tune the keys of an octave by a byte each, in whole cents from -64 to 63, 40h being none', () => {
    const cents = [0, 1, -1, 20.5, -13.7, 63, 70, -64, -70, 0, 0, 0];
    expect(hex(unlengthed(scaleOctave('cents', cents)))).toBe(
      'F0 7F 7F 08 08 03 7F 7F 40 41 3F 55 32 7F 7F 00 00 40 40 40 F7',
    );
  });
  it('name channels by bits: 15 and 16, then 8 to 14, then 1 to 7', () => {
    const bits = (channels: number[]) => hex(unlengthed(scaleOctave('cents', [], channels)).slice(5, 8));
    expect(bits([15])).toBe('02 00 00');
    expect(bits([0, 7, 13, 14])).toBe('01 41 01');
  });
  it('bend a channel by fourteen bits over two semitones', () => {
    expect(hex(pitchBend(3, 0))).toBe('E3 00 40');
    expect(hex(pitchBend(0, 200))).toBe('E0 7F 7F');
    expect(hex(pitchBend(0, -100))).toBe('E0 00 20');
  });
});
