/** What the client asks beyond the protocol. */
import type { Connection } from 'vscode-languageserver';
import { catalogue, type FindingCode } from '../../grammar/findings/catalogue';
import { type CannotDraw, cannotDraw, type Engraver } from '../engraving/engraver';
import { barFill } from '../features/barFill';
import { barPicture } from '../features/barPicture';
import { choiceOffers } from '../features/choices';
import type { EventHere } from '../features/events';
import { exporting } from '../features/exporting';
import { regionEdit } from '../features/facsimile';
import { nextSystem } from '../features/nextSystem';
import { offersAt, openSignItems, settle } from '../features/openSigns/list';
import { engravedPage, noteAt, placeOfNote, systemOn } from '../features/pages';
import { offsetOfPosition } from '../features/place';
import { playingOf } from '../features/playing';
import type { FileRequests, PlainRequests } from '../features/protocol';
import { underTables } from '../features/signHover';
import { soundingAt } from '../features/sounding';
import { tuningOffers } from '../features/tuning/offers';
import { afterTyping } from '../features/typed';
import { weightEdit } from '../features/weights';
import { everyFormat } from '../pages/formats';
import type { Current } from './documents';
import type { Answer } from './requests';

type Result<Name extends keyof FileRequests> = FileRequests[Name]['result'] | Promise<FileRequests[Name]['result']>;

/** Makes a request about a file known: see `Session.answer`. */
type OnFile = <Name extends keyof FileRequests>(
  name: Name,
  fallback: FileRequests[Name]['result'],
  feature: (current: Current, params: FileRequests[Name]['params']) => Result<Name>,
  wants?: 'findings',
) => void;

type EngraverOf = () => Promise<Engraver | CannotDraw>;

export function registerOwnRequests(connection: Connection, answer: Answer, engraver: EngraverOf): void {
  const onFile: OnFile = (name, fallback, feature, wants) => {
    connection.onRequest<unknown, void>(name, answer(fallback, feature, wants));
  };
  typing(onFile);
  pages(onFile, engraver);
  signs(onFile, engraver);
  onFile('bentside/choices', [], ({ project }) => choiceOffers(project));
  onFile('bentside/export', null, ({ project }, params) => exporting(project, params, engraver), 'findings');
  plain(connection);
}

/** What is asked while somebody types. */
function typing(onFile: OnFile): void {
  onFile('bentside/bar', null, ({ project }, { position, reading }) => {
    return barFill(project, offsetOfPosition(project.tree, position), reading)?.words ?? null;
  });
  onFile('bentside/typed', null, ({ project }, params) => afterTyping(project, params), 'findings');
  onFile('bentside/nextSystem', null, ({ project }, { position }) =>
    nextSystem(project, offsetOfPosition(project.tree, position)),
  );
}

/** What the score panel asks. */
function pages(onFile: OnFile, engraver: EngraverOf): void {
  onFile('bentside/page', null, async ({ project }, params) => {
    const drawer = await engraver();
    return cannotDraw(drawer) ? drawer : (engravedPage(project, params, drawer) ?? null);
  });
  onFile('bentside/note', null, ({ project }, { position, reading }) => noteAt(project, position, reading) ?? null);
  onFile(
    'bentside/place',
    null,
    ({ project }, { id, reading, beneath }) => placeOfNote(project, id, reading, beneath) ?? null,
  );
  onFile('bentside/region', null, ({ project }, { reading, page, system, region }) => {
    const found = systemOn(project, reading, page, system);
    return (found && regionEdit(project, found, region)) ?? null;
  });
  onFile(
    'bentside/weight',
    null,
    ({ project }, { id, reading, weight }) => weightEdit(project, id, reading, weight) ?? null,
  );
  onFile('bentside/sounding', [], ({ project }, { position, reading, what }) =>
    soundingAt(project, position, reading, what),
  );
  onFile('bentside/playing', null, ({ project }, params) => playingOf(project, params) ?? null);
  onFile('bentside/tunings', [], ({ project }) => tuningOffers(project));
}

/** Signs and what they mean. */
function signs(onFile: OnFile, engraver: EngraverOf): void {
  onFile('bentside/openSigns', [], ({ project }) => openSignItems(project));
  onFile('bentside/signOffers', [], ({ project }, { position }) => offersAt(project, position));
  onFile(
    'bentside/settle',
    null,
    ({ project }, { position, id, reason }) => settle(project, position, id, reason) ?? null,
  );
  onFile('bentside/otherTables', null, async ({ project }, { position }) => {
    const drawer = await engraver();
    const picture = (at: EventHere, table: string): string | undefined =>
      cannotDraw(drawer) ? undefined : barPicture(at, drawer, { ofSign: true, table });
    return underTables(project, offsetOfPosition(project.tree, position), picture) ?? null;
  });
}

/** What is asked about no file. */
function plain(connection: Connection): void {
  const onPlain = <Name extends keyof PlainRequests>(
    name: Name,
    feature: (params: PlainRequests[Name]['params']) => PlainRequests[Name]['result'],
  ): void => {
    connection.onRequest<unknown, void>(name, feature);
  };
  onPlain('bentside/alive', () => true);
  onPlain('bentside/help', ({ code }) => helpPage(code));
  onPlain('bentside/formats', () => everyFormat.map(({ name, title }) => ({ name, title })));
}

function helpPage(code: string): string | null {
  if (!Object.hasOwn(catalogue, code)) return null;
  const { level, sentence, help } = catalogue[code as FindingCode];
  return `# ${code}\n\n*${level}* · ${sentence}\n\n${help.trim()}\n`;
}
