/**
 * Sounding pitch under the three practices of accidentals.
 *
 * The reach of accidentals before about 1700 (for the note and its immediate repetitions, a flat cancelling a sharp and a
 * sharp a flat, no natural sign) is common practice; so is the reach to the barline from about 1700 on.
 */
import { describe, expect, it } from 'vitest';
import { lane, passage, sound } from '../helpers/music';

describe('a written accidental under the practice `note`', () => {
  it('holds for its note and the immediate repetitions of it, even over a barline', () => {
    expect(sound(lane('4 f#5 f f g | f g f f'))).toBe('f#5 f#5 f#5 g5 f5 g5 f5 f5');
    expect(sound(lane('2 g5 f# | f e'))).toBe('g5 f#5 f#5 e5');
  });
  it('ends with another note, a rest or a gap', () => {
    expect(sound(lane('4 f#5 g f r | f# r f _'))).toBe('f#5 g5 f5 r f#5 r f5 _');
  });
  it('ends with a repeat sign or a double bar', () => {
    expect(sound(lane('1 f#5 :|| f'))).toBe('f#5 f5');
    expect(sound(lane('1 f#5 || f'))).toBe('f#5 f5');
  });
  it('is not broken by another octave being itself: f5 sharp leaves f4 alone', () => {
    expect(sound(lane('2 f#5 f4'))).toBe('f#5 f4');
  });
  it('is taken away by a flat after a sharp and by a sharp after a flat', () => {
    expect(sound(lane('4 f#5 fb f f#'))).toBe('f#5 f5 f5 f#5');
    expect(sound(lane('2 bb4 b#'))).toBe('bb4 b4');
    expect(sound(passage('system upper C1 lower F4 key bb meter C\n dessus | 2 b4 b# |||\n'))).toBe('bb4 b4');
    expect(sound(passage('system upper C1 lower F4 key f# meter C\n dessus | 2 f5 fb |||\n'))).toBe('f#5 f5');
  });
  it('means the same note when the same sign is typed again on it', () => {
    expect(sound(lane('4 g#5 gb gb g'))).toBe('g#5 g5 g5 g5');
    expect(sound(passage('system upper C1 lower F4 key f# meter C\n dessus | 2 fb5= fb | fb f |||\n'))).toBe(
      'f5 f5 f5 f5',
    );
  });
  it('makes a natural with n whatever held', () => {
    expect(sound(lane('4 f#5 fn bb4 bn'))).toBe('f#5 f5 bb4 b4');
  });
  it('binds nothing when it stands on a small note or with a sign', () => {
    expect(sound(lane('{small 8 f#5} 2 f5 f'))).toBe('f#5 f5 f5');
    expect(sound(lane("2 g5'zz'# f"))).toBe('g5 f5');
    expect(sound(lane("2 g5'# g"))).toBe('g#5 g#5');
  });
  it('is interrupted by a small note, which is an event', () => {
    expect(sound(lane('2 f#5 {small 8 g5} f'))).toBe('f#5 g5 f5');
  });
  it('counts alike when drawn above the note, as the editor’s, or as a caution', () => {
    expect(sound(lane("4 f'#5 r r r"))).not.toBe('');
    expect(sound(lane("4 f5'# f[#] f(#) fn"))).toBe('f#5 f#5 f#5 f5');
  });
});

describe('a written accidental under the practice `bar`', () => {
  const before = 'accidentals bar\n';
  it('holds to the barline, in its octave', () => {
    expect(sound(lane('4 f#5 g f f4 | f5 g f f', 'C', before))).toBe('f#5 g5 f#5 f4 f5 g5 f5 f5');
  });
  it('holds for all voices of the stave, in order of time', () => {
    const two = passage('system upper C1 lower F4 meter C\n dessus | 2 c#5 e |||\n taille | 4 a4 c5 r c |||\n', before);
    expect(sound(two, 'taille')).toBe('a4 c#5 r c#5');
  });
  it('does not reach a stave that the voice does not stand on', () => {
    const two = passage('system upper C1 lower F4 meter C\n dessus | 2 c#4 e |||\n basse | 2 c4 c |||\n', before);
    expect(sound(two, 'basse')).toBe('c4 c4');
  });
  it('means its sign literally: a sharp on b flat of the signature is b sharp', () => {
    expect(sound(passage('system upper C1 lower F4 key bb meter C\n dessus | 1 b#4 |||\n', before))).toBe('b#4');
  });
  it('goes on in a bar that a system end breaks', () => {
    const broken = passage(
      'system upper C1 lower F4 meter C\n dessus | 2 f#5\nsystem\n dessus | 2 f5 | 1 f |||\n',
      before,
    );
    expect(sound(broken)).toBe('f#5 f#5 f5');
  });
});

describe('a written accidental under the practice `group`', () => {
  const before = 'accidentals group\n';
  it('holds for the notes under one beam', () => {
    expect(sound(lane('8 f#5 f g f 4 f f#', 'C', before))).toBe('f#5 f#5 g5 f5 f5 f#5');
  });
  it('follows the beam that the source draws', () => {
    expect(sound(lane('8 f#5 g & f g 2 f', 'C', before))).toBe('f#5 g5 f#5 g5 f5');
    expect(sound(lane('8 f#5 , f g f 2 f', 'C', before))).toBe('f#5 f5 g5 f5 f5');
  });
});

describe('the signature', () => {
  it('acts in all octaves, whatever octave it is drawn in', () => {
    expect(sound(passage('system upper C1 lower F4 key bb4 meter C\n dessus | 2 b4 b5 |||\n'))).toBe('bb4 bb5');
  });
  it('may be of one stave only', () => {
    const two = passage('system upper C1 lower F4 key lower bb meter C\n dessus | 1 b4 |||\n basse | 1 b2 |||\n');
    expect([sound(two), sound(two, 'basse')]).toEqual(['b4', 'bb2']);
  });
  it('changes from where the source changes it and is taken away by `key none`', () => {
    expect(sound(lane('2 f5 f | (now key f#) f f | (now key none) f f'))).toBe('f5 f5 f#5 f#5 f5 f5');
  });
});

describe('a tie', () => {
  it('carries the accidental of its first note over barline and system end', () => {
    const over = passage(
      'system upper C1 lower F4 meter C\n dessus | 2 g5 f#= |\nsystem\n dessus | 2 f5 g | f g |||\n',
    );
    expect(sound(over)).toBe('g5 f#5 f#5 g5 f5 g5');
  });
  it('carries it on where the note is repeated by a lone =', () => {
    expect(sound(lane('2 g5 4 f# ='))).toBe('g5 f#5 f#5');
  });
});
