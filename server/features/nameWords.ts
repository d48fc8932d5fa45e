/** What a name stands for, in words. */
import { schemeInWords, temperaments } from '../../grammar/vocabulary/temperaments';
import { instrumentType } from '../instrument/instrument';
import type { Environment } from '../score/environment';
import { signTableByName } from '../signs/tables';
import type { Project } from '../workspace/project';
import { literally, markdown } from './markdown';
import { type NameAt, nameAt, type Space } from './names';
import { type Here, stretchOf } from './nodes';

/** Words about a name, as Markdown; empty where nothing is known of it. */
type Words = (name: string, environment: Environment) => string | undefined;

const named = <Of extends { readonly name: string }>(all: readonly Of[], name: string): Of | undefined =>
  all.find((one) => one.name === name);

function labelInWords(name: string, { sources, readings }: Environment): string | undefined {
  const [letter, layer] = name.split('.');
  const source = named(sources, letter ?? '');
  if (source !== undefined && layer !== undefined) {
    const hand = source.hands.find((one) => `${one.layer}` === layer);
    return markdown`Layer ${layer} of the source ${source.name}: ${hand?.description ?? ''}`;
  }
  if (source !== undefined) return markdown`Source ${name}: ${source.description}`;
  const reading = named(readings, name);
  if (reading !== undefined) return markdown`Reading ${name}: ${reading.description}`;
  if (name === 'sic') return 'What the source has, an evident slip.';
  return name === 'corr' ? 'What the source means, as the editor mends it.' : undefined;
}

function noteInWords(name: string, { notes }: Environment): string | undefined {
  const note = notes.get(name);
  if (note === undefined) return undefined;
  const { text, about, by, certainty, evidence } = note;
  const details = [about, by, certainty === undefined ? undefined : `certainty ${certainty}`, evidence];
  const known = details.flatMap((one) => (one === undefined ? [] : [literally(one)]));
  return [markdown`**${name}** ${text ?? ''}`, known.join(' · ')].join('\n\n').trim();
}

const words: Readonly<Record<Space, Words>> = {
  label: labelInWords,
  note: noteInWords,
  voice: (name, { voices, staves }) => {
    const voice = named(voices, name);
    return (
      voice &&
      `${markdown`Voice ${name}, on the stave ${staves[voice.stave]?.name ?? ''}`}${voice.stems === undefined ? '' : `, stems ${voice.stems}`}`
    );
  },
  stave: (name, { staves }) => {
    const stave = named(staves, name);
    return stave && markdown`Stave ${name} of ${stave.lines} lines`;
  },
  editor: (name, { editors }) => literally(editors.get(name)?.name ?? ''),
  table: (name, { tables }) => {
    const own = named(tables, name);
    return own === undefined
      ? signTableByName(name)?.title
      : `Sign table of this file${own.from === undefined ? '' : markdown`, from ${own.from}`}`;
  },
  temperament: (name) => {
    const builtIn = temperaments.find((one) => one.name === name);
    return builtIn && schemeInWords(builtIn);
  },
  place: (name) => markdown`Place ${name}`,
  section: (name) => markdown`Section ${name}`,
  instrument: (name) => instrumentType(name)?.title,
  manual: (name) => markdown`Manual ${name}`,
  shape: () => undefined,
};

export function nameInWords(
  { environment }: Project,
  { space, name }: Pick<NameAt, 'space' | 'name'>,
): readonly string[] {
  const told = words[space](name, environment);
  return told === undefined || told === '' ? [] : [told];
}

/** The name that stands at a place, in words. */
export function namesAt(project: Project, here: Here): readonly string[] {
  const name = nameAt(project, stretchOf(here, { pos: here.pos, len: 0 }).start);
  return name === undefined ? [] : nameInWords(project, name);
}
