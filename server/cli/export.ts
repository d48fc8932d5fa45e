/** `bentside export`: scores as files to read, to draw, to hear, or for other programs. */
import { cannotDraw } from '../engraving/engraver';
import type { FormOptions } from '../export/form';
import { barRange, type ExportOptions, type Layout } from '../export/formats';
import type { MadeFile, Wish } from '../export/making';
import { type MidiTuning, midiTunings } from '../export/midi/keys';
import { type OrnamentForm, type OrnamentOptions, ornamentForms } from '../export/ornaments';
import { type Output, outputPath, sharedFolder } from '../export/outputPath';
import type { RhythmOptions } from '../export/rhythm';
import { everyFormat, isDrawn } from '../pages/formats';
import { howMany } from '../score/amounts';
import { includesMoved } from '../workspace/moved';
import { projectOf } from '../workspace/project';
import { type CliHost, COULD_NOT, type Command, FAULTY, SOUND } from './command';
import { type Input, inputOptions, inputsOf, isUnread } from './inputs';
import { make } from './making';
import type { Given } from './options';
import { shown } from './print';

const formatNames = everyFormat.map(({ name }) => name);

/** Formats that are read or drawn, those that are heard, and MIDI. */
const WRITTEN = { option: 'as', values: ['musicxml', 'mxl', 'mei', 'svg'] };
const HEARD = { option: 'as', values: ['midi', 'wav', 'html'] };
const MIDI = { option: 'as', values: ['midi'] };
/** A text of the notation is always whole. */
const EVERY_BUT_BENT = { option: 'as', values: formatNames.filter((name) => name !== 'bent') };

export const exportCommand: Command = {
  options: {
    as: {
      value: 'FORMAT',
      among: formatNames,
      says: everyFormat.map(({ name, title }) => `${name}: ${title}`).join('; '),
    },
    reading: { value: 'NAME', says: 'a reading or witness, or all of them: all (as a rule: written; in html all)' },
    bars: { value: 'BARS', only: [EVERY_BUT_BENT], says: 'these bars of every piece only: 9-12' },
    clefs: {
      value: 'CLEFS',
      among: ['source', 'modern'],
      only: [WRITTEN],
      says: 'clefs of the source, or treble and bass (as a rule: source)',
    },
    layout: {
      value: 'LAYOUT',
      among: ['source', 'flow', 'line'],
      only: [{ option: 'as', values: ['svg'] }],
      says: 'pages and systems as the source has them, as they fit, or one long system (as a rule: source); for svg',
    },
    ornaments: {
      value: 'FORM',
      among: ornamentForms,
      only: [{ option: 'as', values: [...WRITTEN.values, 'json', 'midi', 'wav'] }],
      says: 'signs as they stand, as small notes at their note, written out, or with what they mean above the stave (as a rule: sign; in json: full, where the reading has a table)',
    },
    'keep-signs': {
      only: [{ option: 'ornaments', values: ['small', 'full'] }],
      says: 'with --ornaments small or full: the signs stand beside their notes',
    },
    table: {
      value: 'TABLE',
      only: [
        { option: 'ornaments', values: ['small', 'full', 'above'] },
        { option: 'as', values: [...HEARD.values, 'json'] },
      ],
      says: 'realise signs by this table (as a rule: that of the reading, or of the file)',
    },
    rhythm: {
      value: 'FORM',
      among: ['written', 'played'],
      only: [WRITTEN],
      says: 'rhythm as it stands, or as the practices of the reading have it, in standard values (as a rule: played in a reading, written in a source); in json always as played',
    },
    show: {
      value: 'both',
      among: ['both'],
      only: [WRITTEN],
      says: 'both: the rhythm of the reading, and beneath it, as a second part, the rhythm as written',
    },
    repeats: {
      value: 'HOW',
      among: ['written', 'played'],
      only: [{ option: 'as', values: ['json', 'midi', 'wav'] }],
      says: 'repeats and sections as drawn, or played out in their order; for json (as a rule: written) and what is heard (played)',
    },
    tuning: {
      value: 'TUNING',
      only: [HEARD],
      says: 'another tuning than the reading’s, as vallotti or "meantone 1/4"; for what is heard',
    },
    tracks: {
      value: 'BY',
      among: ['voice', 'manual'],
      only: [MIDI],
      says: 'a track for each voice or manual (as a rule: voice); for midi',
    },
    'midi-tuning': {
      value: 'HOW',
      among: midiTunings,
      only: [MIDI],
      says: 'tuning messages for all keys, for the keys of an octave (finely or in whole cents), pitch bends, or none (as a rule: notes); for midi',
    },
    out: { value: 'DIR', says: 'put the files into this folder' },
    'leave-gaps': { says: 'export a score with errors too, its broken bars left empty' },
    ...inputOptions,
  },
  async run(host, given) {
    const wish = await wishOf(host, given);
    if (typeof wish === 'string') {
      host.say(`${wish}\n`);
      return COULD_NOT;
    }
    const inputs = await inputsOf(host, given);
    const batch = new Batch(
      host,
      wish,
      given.values.get('out'),
      inputs.filter((one) => !isUnread(one)),
    );
    const failed = inputs.filter((input) => {
      if (!isUnread(input)) return !batch.export(input, inputs.length === 1);
      host.say(`${shown(input.file)}: ${input.failure}\n`);
      return true;
    });
    if (failed.length === 0) return SOUND;
    if (inputs.length > 1) {
      const names = failed.map(({ file }) => shown(file)).join(', ');
      host.say(
        `${failed.length} of ${howMany(inputs.length, 'file', 'files')} not exported, or not wholly: ${names}\n`,
      );
    }
    return inputs.every(isUnread) ? COULD_NOT : FAULTY;
  },
};

/** What is wished, or a sentence that says what is wrong with the wish. */
async function wishOf(host: CliHost, { values, flags }: Given): Promise<Wish | string> {
  const format = await formatOf(host, values.get('as'));
  if (typeof format === 'string') return format;
  const wanted = values.get('bars');
  const bars = wanted === undefined ? undefined : barRange(wanted);
  if (wanted !== undefined && bars === undefined)
    return `--bars is one bar or a first and a last, as 9-12, not “${shown(wanted)}”.`;
  return {
    format,
    reading: values.get('reading'),
    options: {
      clefs: values.get('clefs') === 'modern' ? 'modern' : 'source',
      leaveGaps: flags.has('leave-gaps'),
      layout: (values.get('layout') ?? 'source') as Layout,
      ...(bars === undefined ? {} : { bars }),
      ...ornamentsOf(values),
      ...rhythmOf(values),
      keepSigns: flags.has('keep-signs'),
      ...soundOf(values),
    },
  };
}

/** What is said of formats that are heard; those play repeats out where nothing is said. */
function soundOf(values: Given['values']): Pick<ExportOptions, 'repeats' | 'tuning' | 'tracks' | 'midiTuning'> {
  const names = ['repeats', 'tuning', 'tracks', 'midi-tuning'];
  const [repeats, tuning, tracks, midiTuning] = names.map((name) => values.get(name));
  return {
    ...(repeats === undefined ? {} : { repeats: repeats as 'written' | 'played' }),
    ...(tracks === undefined ? {} : { tracks: tracks as 'voice' | 'manual' }),
    ...(tuning === undefined ? {} : { tuning }),
    ...(midiTuning === undefined ? {} : { midiTuning: midiTuning as MidiTuning }),
  };
}

function ornamentsOf(values: Given['values']): OrnamentOptions {
  const [ornaments, table] = [values.get('ornaments'), values.get('table')];
  return {
    ...(ornaments === undefined ? {} : { ornaments: ornaments as OrnamentForm }),
    ...(table === undefined ? {} : { table }),
  };
}

function rhythmOf(values: Given['values']): RhythmOptions & Pick<FormOptions, 'show'> {
  const rhythm = values.get('rhythm');
  return {
    ...(rhythm === undefined ? {} : { rhythm: rhythm === 'played' ? 'played' : 'written' }),
    ...(values.has('show') ? { show: 'both' } : {}),
  };
}

/** A format by its name, or a sentence that says why it is not to be had. */
async function formatOf(host: CliHost, wanted: string | undefined): Promise<Wish['format'] | string> {
  const format = everyFormat.find(({ name }) => name === wanted);
  if (format === undefined) return `Say in which format: --as ${formatNames.join('|')}.`;
  if (!isDrawn(format)) return format;
  const engraver = await host.engraver();
  return cannotDraw(engraver) ? `${engraver.failure}` : format.drawnBy(engraver);
}

/** The exports of one command, none of which may meet another or an input. */
export class Batch {
  private readonly taken: Set<string>;
  private readonly shared: string;

  constructor(
    private readonly host: CliHost,
    private readonly wish: Wish,
    private readonly folder: string | undefined,
    inputs: readonly { readonly file: string }[],
  ) {
    this.taken = new Set(inputs.map(({ file }) => host.place(file)));
    this.shared = sharedFolder(inputs.map(({ file }) => host.absolute(file)));
  }

  /** Whether all that was wished of this input was made and written. */
  export(input: Input, alone: boolean): boolean {
    this.host.progress(`${shown(input.file)} …\n`);
    const made = make(projectOf(this.host.includes(input.file), input.file, input.text), this.wish);
    this.host.say(made.says);
    const [only] = made.files;
    const isOne = made.files.length === 1;
    if (alone && isOne && this.mayStream() && only !== undefined && typeof only.content === 'string') {
      this.host.out(only.content);
      return made.whole;
    }
    return made.files.map((one) => this.write(input, one)).every(Boolean) && made.whole;
  }

  private mayStream(): boolean {
    return this.folder === undefined && this.wish.format.isText && this.wish.reading !== 'all';
  }

  private write(input: Input, file: MadeFile): boolean {
    const { reading, content } = file;
    const path = outputPath(this.output(input, file));
    const place = this.host.place(path);
    if (this.taken.has(place)) {
      this.host.say(`${shown(path)}: not written over; another score of this batch has that name\n`);
      return false;
    }
    this.taken.add(place);
    const trouble = this.host.write(path, this.asWritten(content, input, this.host.absolute(path)));
    this.host.say(`${shown(path)}: ${trouble === undefined ? this.written(reading) : trouble.failure}\n`);
    return trouble === undefined;
  }

  /** A text of the notation includes what it included where it lay before. */
  private asWritten(content: MadeFile['content'], { file }: Input, into: string): MadeFile['content'] {
    const isNotation = this.wish.format.name === 'bent' && typeof content === 'string';
    return isNotation ? includesMoved(content, this.host.absolute(file), into) : content;
  }

  /** Where readings stand together the file has the name of none. */
  private written(reading: string): string {
    return 'writeEdition' in this.wish.format ? 'written' : `written, reading ${reading}`;
  }

  private output({ file }: Input, { reading, page }: MadeFile): Output {
    const named = { reading, extension: this.wish.format.extension, ...(page === undefined ? {} : { page }) };
    if (this.folder === undefined) return { input: file, ...named };
    return { input: this.host.absolute(file), ...named, into: { folder: this.folder, shared: this.shared } };
  }
}
