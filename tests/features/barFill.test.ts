/** How full the bar at the caret is, in the words of the status bar. */
import { describe, expect, it } from 'vitest';
import { barFill } from '../../server/features/barFill';
import { noFiles } from '../../server/workspace/host';
import { projectOf } from '../../server/workspace/project';
import { HEAD } from '../helpers/music';

/** The fill where `^` stands. */
function fillAt(music: string, reading = 'written') {
  const marked = `${HEAD}reading plain "as the leaf has it"\n  takes L\n${music}`;
  return barFill(projectOf(noFiles, 'passage.bent', marked.replace('^', '')), marked.indexOf('^'), reading);
}

const words = (music: string, reading?: string): string | undefined => fillAt(music, reading)?.words;

describe('the fill of the bar at the caret', () => {
  it('counts in the largest value that fits both', () => {
    expect(words('system upper G2 meter C\n  dessus | 1 c5 | 4 c5 8 d ^\n')).toBe('bar 2: 3 of 8 quavers');
    expect(words('system upper G2 meter 3/2\n  dessus | 2 c5 d^\n')).toBe('bar 1: 4 of 6 crotchets');
  });
  it('says fractions of a semibreve where no value fits', () => {
    expect(words('system upper G2 meter C\n  dessus | 8x c5 d^ \n')).toBe('bar 1: 1/6 of 1 semibreve');
  });
  it('is that of the whole bar wherever the caret stands in it, after the barline that of the next', () => {
    expect(words('system upper G2 meter C\n  dessus | 4 c5 ^d e f | 1 g |\n')).toBe('bar 1: 4 of 4 crotchets');
    expect(words('system upper G2 meter C\n  dessus | 4 c5 d e f |^ 2 g |\n')).toBe('bar 2: 2 of 4 crotchets');
  });
  it('tells when there is too much', () => {
    expect(words('system upper G2 meter C\n  dessus | 2 c5 d e^ \n')).toBe('bar 1: 6 of 4 crotchets, too many');
  });
  it('goes on from a bar that the system before left open', () => {
    const music = 'system upper G2 meter C\n  dessus | 2 c5\nsystem\n  dessus | 4 d5^\n';
    expect(words(music)).toBe('bar 1: 3 of 4 crotchets');
  });
  it('is that of the reading that is shown', () => {
    const music = 'system upper G2 meter C\n  dessus | 2 c5 <K: 2 d5 ; L: 4 d5>^ |\n';
    expect(words(music)).toBe('bar 1: 4 of 4 crotchets');
    expect(words(music, 'plain')).toBe('bar 1: 3 of 4 crotchets');
  });
  it('counts in the bars of its own system, not in those of the first', () => {
    const music = 'system upper G2 meter C\n  dessus | 1 c5 | d |\nsystem\n  dessus | 1 c5 | 2 e^\n';
    expect(words(music)).toBe('bar 4: 2 of 4 crotchets');
  });
  it('is not there in statements, figures and music without measure', () => {
    expect(words('system upper G^2 meter C\n  dessus | 1 c5 |\n')).toBeUndefined();
    expect(words('system upper G2 meter C\n  dessus | 1 c5 |\n    fig | 6^ |\n')).toBeUndefined();
    expect(words('system free upper G2\n  dessus | c5^ |\n')).toBeUndefined();
  });
});
