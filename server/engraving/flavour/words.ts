/** Words sung under the notes of a voice. */
import { addressOfId } from '../../export/mei/ids';
import { childrenOf, type XmlElement, xml } from '../../export/xml';
import { idOf, isOfType, isStave, mapped, withAttributes } from './element';

/**
 * The library draws the line of a syllable that is held on, and the dashes of a word, to the next syllable that it finds,
 * if it be empty. So of what only holds on there stays the last, where the line ends; dashes go to the next syllable.
 */
export class Words {
  /** Voices with the number of the stanza, where a word goes on. */
  private readonly goingOn = new Set<string>();
  /** Whether the stave that is being read has words. */
  private isSung = false;
  /** Staves of the movement under which there are words. */
  private readonly staves = new Set<string>();

  /** A syllable, stave or movement rewritten; to be asked in the order of the document, of what stands within first. */
  drawn(element: XmlElement): XmlElement | undefined {
    if (element.name === 'verse') return this.verse(element);
    if (element.name === 'mdiv') return this.movement(element);
    if (isStave(element) && this.isSung) {
      this.staves.add(`${element.attributes.n}`);
      this.isSung = false;
    }
    return element;
  }

  private movement(movement: XmlElement): XmlElement {
    if (this.staves.size === 0) return movement;
    const parted = mapped(movement, (element) => withoutBarlines(element, this.staves));
    this.staves.clear();
    return parted;
  }

  private verse(verse: XmlElement): XmlElement | undefined {
    this.isSung = true;
    const [syllable] = childrenOf(verse);
    if (syllable === undefined) return verse;
    const { wordpos, con } = syllable.attributes;
    const stanza = `${addressOfId(idOf(verse))?.lane} ${verse.attributes.n}`;
    if (isOfType(syllable, 'hold')) return this.goingOn.has(stanza) || con !== undefined ? undefined : verse;
    if (wordpos !== 'i' && wordpos !== 'm') {
      this.goingOn.delete(stanza);
      return verse;
    }
    this.goingOn.add(stanza);
    return { ...verse, content: [withAttributes(syllable, { con: 'd' })] };
  }
}

/** A group of staves whose barlines do not run through the words under one of them (common practice). */
function withoutBarlines(group: XmlElement, sung: ReadonlySet<string>): XmlElement {
  if (group.attributes['bar.thru'] !== 'true') return group;
  const runs: XmlElement[][] = [[]];
  const staves = childrenOf(group).filter(({ name }) => name === 'staffDef');
  for (const stave of staves) {
    runs.at(-1)?.push(stave);
    if (sung.has(`${stave.attributes.n}`)) runs.push([]);
  }
  const others = childrenOf(group).filter((child) => !staves.includes(child));
  const parts = runs.filter(({ length }) => length > 0);
  if (parts.length < 2) return group;
  const groups = parts.map((run) => (run.length === 1 ? run[0] : xml('staffGrp', { 'bar.thru': 'true' }, run)));
  return { ...withAttributes(group, { 'bar.thru': 'false' }), content: [...others, ...groups] };
}
