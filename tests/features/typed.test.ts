/** What a sign that was just typed brings with it. */
import { describe, expect, it } from 'vitest';
import { edited } from '../../server/document/edits';
import { offsetOfPosition, positionOfOffset } from '../../server/features/place';
import { afterTyping } from '../../server/features/typed';
import { noFiles } from '../../server/workspace/host';
import { projectOf } from '../../server/workspace/project';
import { HEAD } from '../helpers/music';

/**
 * The lane after the sign before `^` was typed; unchanged where it brings nothing.
 * @param above another lane of the system
 */
function typed(lane: string, meter = 'C', above = ''): string {
  const head = `${HEAD}system upper G2 meter ${meter}\n${above}  dessus | `;
  const marked = `${head}${lane}\n`;
  const project = projectOf(noFiles, 'passage.bent', marked.replace('^', ''));
  const position = positionOfOffset(project.tree, marked.indexOf('^'));
  const edits = afterTyping(project, { position, reading: 'written' })?.edits ?? [];
  const changes = edits.map(({ range, newText }) => {
    const offset = offsetOfPosition(project.tree, range.start);
    return { offset, length: offsetOfPosition(project.tree, range.end) - offset, text: newText };
  });
  return edited(project.tree.text, changes).slice(head.length, -1);
}

describe('a space after an event', () => {
  it('closes a bar that is full', () => {
    expect(typed('4 c5 d e f ^')).toBe('4 c5 d e f | ');
    expect(typed('2. c5 | d ^', '3/2')).toBe('2. c5 | d ');
    expect(typed('2. c5 d ^', '3/2')).toBe('2. c5 d | ');
    expect(typed('{3in2 4 c5 d e} 2 f ^')).toBe('{3in2 4 c5 d e} 2 f | ');
    expect(typed('rbar ^')).toBe('rbar | ');
  });
  it('leaves a bar open that is not full, or more than full', () => {
    expect(typed('4 c5 d e ^')).toBe('4 c5 d e ');
    expect(typed('2 c5 d e ^')).toBe('2 c5 d e ');
  });
  it('closes none before other music, or before a barline', () => {
    expect(typed('4 c5 d ^e f')).toBe('4 c5 d e f');
    expect(typed('4 c5 d e f ^| g')).toBe('4 c5 d e f | g');
  });
  it('closes none within options or a span that is still open', () => {
    expect(typed('2 c5 <K: 2 d ^>')).toBe('2 c5 <K: 2 d >');
    expect(typed('2 c5 {small 8 d5 ^}')).toBe('2 c5 {small 8 d5 }');
    expect(typed('2 c5 {unclear 2 d ^')).toBe('2 c5 {unclear 2 d ');
  });
  it('closes none within options that hold a barline', () => {
    expect(typed('<K: 2. e5 4 b | 2 g5 a ^')).toBe('<K: 2. e5 4 b | 2 g5 a ');
  });
  it('puts nothing into a comment or a text', () => {
    expect(typed('4 c5 d e f // x ^')).toBe('4 c5 d e f // x ');
    expect(typed('4 c5 d e f*"dark ^')).toBe('4 c5 d e f*"dark ');
  });
  it('closes it with the barline that the lane above has there', () => {
    const above = '  taille | 1 c4 | 1 d :|| 1 e ||\n';
    expect(typed('1 c5 ^', 'C', above)).toBe('1 c5 | ');
    expect(typed('1 c5 | d ^', 'C', above)).toBe('1 c5 | d :|| ');
    expect(typed('1 c5 | d :|| e ^', 'C', above)).toBe('1 c5 | d :|| e || ');
  });
  it('closes a bar that is shorter or longer than its meter where the lane above has done so', () => {
    const above = '  taille | 8 c4 | 1 d | (irregular) 1 e 2 f :|| 2. g\n';
    expect(typed('8 c5 ^', 'C', above)).toBe('8 c5 | ');
    expect(typed('8 c5 | 1 d | 1 e ^', 'C', above)).toBe('8 c5 | 1 d | 1 e ');
    expect(typed('8 c5 | 1 d | 1 e 2 f ^', 'C', above)).toBe('8 c5 | 1 d | 1 e 2 f :|| ');
    // What is still open above says nothing.
    expect(typed('8 c5 | 1 d | 1 e 2 f :|| 2. g ^', 'C', above)).toBe('8 c5 | 1 d | 1 e 2 f :|| 2. g ');
  });
  it('closes none within options, nor in a comment or words', () => {
    expect(typed('<v2 K: 2 c5 d | 1 e ^')).toBe('<v2 K: 2 c5 d | 1 e ');
    expect(typed('<v2 K: 2 c5 d | 1 e ; L: 1 c5 | 1 d> 1 c ^')).toBe('<v2 K: 2 c5 d | 1 e ; L: 1 c5 | 1 d> 1 c ');
    expect(typed('4 c5 d e f // x ^')).toBe('4 c5 d e f // x ');
    expect(typed('4 c5 d e f "tout ^')).toBe('4 c5 d e f "tout ');
  });
  it('closes a bar once, however many spaces follow', () => {
    expect(typed('4 c5 d e f  ^')).toBe('4 c5 d e f  ');
    expect(typed('4 c5 d e f | ^')).toBe('4 c5 d e f | ');
  });
});

describe('a custos', () => {
  it('that is typed after the last bar has closed itself stands before the barline', () => {
    expect(typed('1 c5 | d | (custos ^)')).toBe('1 c5 | d (custos )');
    expect(typed('1 c5 | d || (custos ^')).toBe('1 c5 | d (custos ');
  });
  it('closes the bar again when it is whole', () => {
    expect(typed('1 c5 (custos d5) ^')).toBe('1 c5 (custos d5) | ');
  });
  it('stays where it is before other music, as other changes do', () => {
    expect(typed('1 c5 | (custos ^) d')).toBe('1 c5 | (custos ) d');
    expect(typed('1 c5 | (now ^)')).toBe('1 c5 | (now )');
  });
});

describe('a letter of a dead-key keyboard', () => {
  it('gives its apostrophe back, so that a sign can be typed', () => {
    expect(typed('4 c5á^')).toBe("4 c5'a");
    expect(typed('4 c5ć^')).toBe("4 c5'c");
  });
  it('is a straight apostrophe where the keyboard makes a typographic one', () => {
    expect(typed('4 c5’^')).toBe("4 c5'");
    expect(typed('4 c5’z^')).toBe("4 c5'z");
  });
  it('stays in words', () => {
    expect(typed('"á^" 4 c5')).toBe('"á" 4 c5');
  });
});
