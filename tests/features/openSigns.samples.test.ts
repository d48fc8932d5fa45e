/**
 * The decisions list of every sample: each offer of each sign is taken, and the text read again. What the list promises is
 * held against a table of the file's own that has the chosen recipe as its row.
 */
import { describe, expect, it } from 'vitest';
import { format } from '../../grammar/time';
import { pitchText } from '../../grammar/vocabulary/pitches';
import { nodeHost } from '../../server/cli/host';
import { decidedIn } from '../../server/document/decided';
import { edited, type TextChange } from '../../server/document/edits';
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

/** Everything but what is played for some signs: notes of other bars to the last fraction, those around them by their pitches. */
function besides(
  events: readonly PerformedEvent[],
  signs: readonly OpenSign[],
  also: ReadonlySet<string> = new Set(),
): string[] {
  const own = new Set([...also, ...signs.map(({ address }) => address)]);
  const near = new Set(signs.flatMap(({ bar: { index } }) => [index - 1, index, index + 1]));
  return events.flatMap((event) => {
    const addresses = addressesOf(event);
    if (addresses.some((address) => own.has(address))) return [];
    const isNear = event.from.some(({ placed }) => near.has(placed.bar.index));
    const pitch = event.pitch === undefined ? 'r' : pitchText(event.pitch);
    return `${addresses.join('=')} ${isNear ? pitch : note(event)}`;
  });
}

/** Where a shape is drawn, also in the other lanes over which one sign goes. */
const bearing = (events: readonly PerformedEvent[], shape: string): ReadonlySet<string> =>
  new Set(
    events
      .filter(({ from }) => from.some(({ member }) => member?.marks.some(({ shapes }) => shapes.includes(shape))))
      .flatMap(addressesOf),
  );

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
  analysis.findings().flatMap(({ level, message }) => (level === 'error' || level === 'warning' ? message : []));

interface Taken {
  readonly sign: OpenSign;
  readonly offer: Offer;
}

/** Of an annotation that all signs share, so that they can be settled at once. */
const REASON = 'as the editor decided';

class Sample {
  readonly project: Project;
  readonly signs: readonly OpenSign[];
  private readonly workspace: Workspace;
  private readonly errors: readonly string[];
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

  /** What is not as promised once these offers are taken; empty if all is well. */
  faultsOf(taken: readonly Taken[]): string[] {
    const all = taken.flatMap(({ offer }) => offer.changes(REASON));
    const changes = [...new Map(all.map((change) => [JSON.stringify(change), change])).values()];
    const after = this.workspace.update(samplePath(this.name), edited(this.project.tree.text, changes), {
      counsel: false,
    });
    const left = new Set(openSignsOf(after).map(({ address, typed }) => `${address} ${typed}`));
    const signs = taken.map(({ sign }) => sign);
    const now = new Map([...this.before.keys()].map((reading) => [reading, playedIn(after, reading)]));
    return [
      ...errorsIn(after).filter((message) => !this.errors.includes(message)),
      ...signs.flatMap(({ address, typed }) =>
        left.has(`${address} ${typed}`) ? [`${address} ${typed} is still on the list`] : [],
      ),
      ...[...this.before].flatMap(([reading, events]) =>
        besides(now.get(reading) ?? [], signs).join() === besides(events, signs).join()
          ? []
          : [`${reading}: other notes change`],
      ),
      ...taken.flatMap(({ sign, offer }) => {
        const readings = tooShortIn(sign, changes, after);
        return offer.kind === 'accept' ? this.asBefore(sign, now) : this.asChosen(sign, offer, now, readings);
      }),
    ];
  }

  /** What is not as promised once a row for these signs is put in. */
  faultsOfRow(offer: Offer, signs: readonly OpenSign[]): string[] {
    const text = edited(this.project.tree.text, offer.changes(''));
    const after = this.workspace.update(samplePath(this.name), text, { counsel: false });
    const isSame = ([reading, events]: readonly [string, readonly PerformedEvent[]]): boolean => {
      const own = bearing(events, signs[0]?.signs[0].shapes[0] ?? '');
      return besides(playedIn(after, reading), signs, own).join() === besides(events, signs, own).join();
    };
    return [
      ...errorsIn(after).filter((message) => !this.errors.includes(message)),
      ...[...this.before].filter((entry) => !isSame(entry)).map(([reading]) => `${reading}: other notes change`),
    ];
  }

  private asBefore({ address }: OpenSign, now: ReadonlyMap<string, readonly PerformedEvent[]>): string[] {
    return [...this.before].flatMap(([reading, events]) => {
      const [had, has] = [notesAt(events, address), notesAt(now.get(reading) ?? [], address)];
      return had === has ? [] : [`${address} in ${reading}: ${had} becomes ${has}`];
    });
  }

  private asChosen(
    sign: OpenSign,
    { id }: Offer,
    now: ReadonlyMap<string, readonly PerformedEvent[]>,
    tooShort: ReadonlySet<string>,
  ): string[] {
    return sign.ways.flatMap((way) => {
      const [reading = ''] = way.readings;
      // There may be no time for it, which is told.
      if (!way.choices.some(({ word }) => word === id) || tooShort.has(reading)) return [];
      const events = now.get(reading) ?? [];
      if (id.startsWith('from ')) return begins(sign, id, events);
      const recipe = recipeTyped(way, id);
      const has = notesAt(events, sign.address);
      const promised = recipe === undefined ? has : notesAt(this.byOwnTable(sign, way, recipe), sign.address);
      return has === promised && has !== '' ? [] : [`${sign.address}, ${id} in ${reading}: not ${promised} but ${has}`];
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
}

/** From the written note, or from one above it. */
function begins({ address, signs: [{ written }] }: OpenSign, word: string, now: readonly PerformedEvent[]): string[] {
  const first = now.find((event) => addressesOf(event).includes(address) && event.realised !== undefined);
  const above = (first?.pitch?.midi ?? 0) - (written.member?.midi ?? 0);
  return (word === 'from main' ? above === 0 : above > 0) ? [] : [`${address} begins ${above} semitones above`];
}

/** The readings in which there is no time for a sign, as a finding tells. */
function tooShortIn({ start }: OpenSign, changes: readonly TextChange[], { analysis }: Project): ReadonlySet<string> {
  const before = changes.filter(({ offset }) => offset < start);
  const moved = before.reduce((at, { length, text }) => at + text.length - length, start);
  const told = decidedIn(analysis).findings.filter(
    ({ code, range }) => code === 'sign-too-short' && range.start.offset === moved,
  );
  return new Set(told.flatMap(({ readings = [] }) => readings));
}

it('the samples but one, which has no sign, have open signs', () => {
  const withOpen = sampleNames.filter((name) => openSignsOf(sampleProject(name)).length > 0);
  expect(sampleNames.filter((name) => !withOpen.includes(name))).toEqual(['ricercar.bent']);
});

/** Signs so far from one another that what is chosen at one does not reach the next. */
const APART = 5;

describe.each(sampleNames)('%s', (name) => {
  const sample = new Sample(name);

  it('is played as before once every sign is accepted, and nothing is left on the list', () => {
    const all = sample.signs.flatMap((sign) =>
      offersOf(sample.project, sign).flatMap((offer) => (offer.kind === 'accept' ? { sign, offer } : [])),
    );
    expect(sample.faultsOf(all)).toEqual([]);
  });

  it('is played as promised at each sign once another way is chosen there, and as before everywhere else', () => {
    const passes = new Map<string, Taken[]>();
    for (const [index, sign] of sample.signs.entries()) {
      const choices = offersOf(sample.project, sign).filter(({ kind }) => kind === 'choice');
      for (const [nth, offer] of choices.entries()) {
        const pass = `${nth} ${index % APART}`;
        passes.set(pass, [...(passes.get(pass) ?? []), { sign, offer }]);
      }
    }
    expect([...passes.values()].flatMap((taken) => sample.faultsOf(taken))).toEqual([]);
  });

  it('is played as before, but for the signs that its table did not have, once that has a row for them', () => {
    const faults = sample.signs.flatMap((sign) => {
      const offer = offersOf(sample.project, sign).find(({ title }) => title.endsWith('all other signs as before'));
      const alike = sample.signs.filter(({ typed }) => typed === sign.typed);
      return offer === undefined ? [] : sample.faultsOfRow(offer, alike);
    });
    expect(faults).toEqual([]);
  });
});
