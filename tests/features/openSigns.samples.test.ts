/**
 * The decisions list of every sample: each offer of each sign is taken, and the text read again. What the list promises is
 * held against a table of the file's own that has the chosen recipe as its row.
 */
import { describe, expect, it } from 'vitest';
import { format } from '../../grammar/time';
import { pitchText } from '../../grammar/vocabulary/pitches';
import { nodeHost } from '../../server/cli/host';
import { edited } from '../../server/document/edits';
import { type Offer, offersOf } from '../../server/features/openSigns/offers';
import { type OpenSign, openSignsOf, type Way } from '../../server/features/openSigns/openSigns';
import { perform } from '../../server/readings/perform';
import type { PerformedEvent } from '../../server/score/performance';
import { addressOf } from '../../server/score/walk';
import { signTableByName } from '../../server/signs/tables';
import type { Project } from '../../server/workspace/project';
import { Workspace } from '../../server/workspace/workspace';
import { scoreOf } from '../helpers/music';
import { sampleNames, samplePath, sampleProject, sampleText } from '../helpers/samples';

// ─── what is played ──────────────────────────────────────────────────────────────────────────────────────────────

const note = ({ pitch, onset, duration }: PerformedEvent): string =>
  `${pitch === undefined ? 'r' : pitchText(pitch)} ${format(onset)} ${format(duration)}`;

const addressesOf = ({ from }: PerformedEvent): string[] =>
  from.map(({ placed: { system, event } }) => addressOf(system, event));

const playedIn = ({ analysis }: Project, reading: string, table?: string): PerformedEvent[] =>
  perform(scoreOf(analysis, reading), table === undefined ? {} : { table }).pieces.flatMap(({ events }) => events);

/** The notes played for what is written at an address. */
const notesAt = (events: readonly PerformedEvent[], address: string): string =>
  events
    .filter((event) => addressesOf(event).includes(address))
    .map(note)
    .join(', ');

/** Everything but what is played for one sign: notes of other bars to the last fraction, those around it by their pitches. */
function besides(events: readonly PerformedEvent[], { address, bar }: OpenSign): string[] {
  return events.flatMap((event) => {
    if (addressesOf(event).includes(address)) return [];
    const near = event.from.some(({ placed }) => Math.abs(placed.bar.index - bar.index) <= 1);
    const pitch = event.pitch === undefined ? 'r' : pitchText(event.pitch);
    return near ? `${addressesOf(event).join('=')} ${pitch}` : `${addressesOf(event).join('=')} ${note(event)}`;
  });
}

// ─── what was promised ───────────────────────────────────────────────────────────────────────────────────────────

/** The recipe that a word chooses, as a treatise's table has it; undefined of a table of the sample's own. */
function recipeTyped(way: Way, word: string): string | undefined {
  const choice = way.choices.find((one) => one.word === word);
  const row = signTableByName(choice?.row.table ?? '')?.rows.find(({ label }) => label === choice?.row.label);
  return row?.rivals?.find(({ name }) => name === word)?.recipe ?? (row?.names[0] === word ? row.recipe : undefined);
}

// ─── taking offers ───────────────────────────────────────────────────────────────────────────────────────────────

/** The readings that play the sample's signs. */
const readingsOf = ({ analysis, environment }: Project): string[] => {
  const declared = environment.readings.map(({ name }) => name);
  return declared.length > 0 ? declared : [...analysis.choices];
};

const errorsIn = ({ analysis }: Project): string[] =>
  analysis
    .findings()
    .filter(({ level }) => level === 'error' || level === 'warning')
    .map(({ message }) => message);

class Sample {
  readonly project: Project;
  readonly signs: readonly OpenSign[];
  private readonly workspace: Workspace;
  private readonly errors: readonly string[];
  private readonly proofed = new Set<string>();
  private readonly chosen = new Map<string, PerformedEvent[]>();
  private readonly before: ReadonlyMap<string, PerformedEvent[]>;

  constructor(readonly name: string) {
    this.workspace = new Workspace(nodeHost().includes(samplePath(name)));
    this.project = sampleProject(name);
    this.errors = errorsIn(this.project);
    this.signs = openSignsOf(this.project);
    this.before = new Map(
      ['written', ...readingsOf(this.project)].map((reading) => [reading, playedIn(this.project, reading)]),
    );
  }

  /** What is not as promised once an offer is taken; empty if all is well. */
  faultsOf(sign: OpenSign, offer: Offer): string[] {
    const text = edited(this.project.tree.text, offer.changes(offer.reason));
    const after = this.workspace.update(samplePath(this.name), text, { counsel: false });
    const faults = this.newErrors(offer, after);
    if (openSignsOf(after).some(({ address, typed }) => address === sign.address && typed === sign.typed)) {
      faults.push('it is still on the list');
    }
    for (const [reading, events] of this.before) {
      const now = playedIn(after, reading);
      if (besides(now, sign).join() !== besides(events, sign).join()) faults.push(`${reading}: other notes change`);
      const [had, has] = [notesAt(events, sign.address), notesAt(now, sign.address)];
      if (offer.kind === 'accept' && had !== has) faults.push(`${reading}: ${had} becomes ${has}`);
    }
    if (offer.kind === 'choice') faults.push(...this.asChosen(sign, offer, after));
    return faults;
  }

  /** Each word is proofed once: what it does to the text is alike wherever it stands. */
  private newErrors({ id }: Offer, after: Project): string[] {
    if (this.proofed.has(id)) return [];
    this.proofed.add(id);
    return errorsIn(after).filter((message) => !this.errors.includes(message));
  }

  private asChosen(sign: OpenSign, { id }: Offer, after: Project): string[] {
    return sign.ways.flatMap((way) => {
      const [reading = ''] = way.readings;
      const choice = way.choices.find(({ word }) => word === id);
      if (choice === undefined) return [];
      const now = playedIn(after, reading);
      const has = notesAt(now, sign.address);
      if (id.startsWith('from ')) return this.begins(sign, id, now);
      const recipe = recipeTyped(way, id);
      if (recipe === undefined) return has.length > 0 ? [] : [`${reading}: nothing is played`];
      const promised = notesAt(this.byOwnTable(sign, way, recipe), sign.address);
      return has === promised ? [] : [`${reading}: not ${promised} but ${has}`];
    });
  }

  /** What is played where a table of the file's own has this recipe for the sign, and nothing stands in round brackets. */
  private byOwnTable({ signs }: OpenSign, { table, readings: [reading = ''] }: Way, recipe: string): PerformedEvent[] {
    const shapes = signs.flatMap((sign) => sign.shapes).join('+');
    const chosen = `table chosen from ${table}\n  ${shapes} "chosen" : ${recipe}\n`;
    const key = `${reading} ${chosen}`;
    const text = sampleText(this.name).replace(/^bentside .*\n/m, (line) => line + chosen);
    const events = this.chosen.get(key) ?? playedIn(sampleProject(this.name, text), reading, 'chosen');
    this.chosen.set(key, events);
    return events;
  }

  /** From the written note, or from one above it. */
  private begins({ address, signs: [{ written }] }: OpenSign, word: string, now: readonly PerformedEvent[]): string[] {
    const first = now.find((event) => addressesOf(event).includes(address) && event.realised !== undefined);
    const above = (first?.pitch?.midi ?? 0) - (written.member?.midi ?? 0);
    return (word === 'from main' ? above === 0 : above > 0) ? [] : [`begins ${above} semitones above`];
  }
}

it('the samples but one, which has no sign, have open signs', () => {
  const withOpen = sampleNames.filter((name) => openSignsOf(sampleProject(name)).length > 0);
  expect(sampleNames.filter((name) => !withOpen.includes(name))).toEqual(['ricercar.bent']);
});

describe.each(sampleNames)('%s', (name) => {
  const sample = new Sample(name);

  it('each open sign is off the list and played as promised once an offer is taken', () => {
    const faults = sample.signs.flatMap((sign) =>
      offersOf(sample.project, sign)
        .filter(({ kind }) => kind !== 'mend')
        .flatMap((offer) =>
          sample.faultsOf(sign, offer).map((fault) => `${sign.address} ${sign.typed}, ${offer.id}: ${fault}`),
        ),
    );
    expect(faults).toEqual([]);
  });
});
