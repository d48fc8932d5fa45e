/** What the tuning panel asks; a score may be tuned for after another that is open. */
import type { Connection } from 'vscode-languageserver';
import type { FileRequests, TuningParams } from '../features/protocol';
import { textEdits } from '../features/quickFixes';
import { type OtherScore, showTuning, wantedTuning } from '../features/tuning/show';
import { writingTuning } from '../features/tuning/write';
import type { Documents } from './documents';
import type { Answer } from './requests';

export function registerTuningRequests(connection: Connection, answer: Answer, documents: Documents): void {
  const others = async ({ wanted, before }: TuningParams): Promise<OtherScore> => {
    const uris = [wanted, before].flatMap((choice) => (choice?.kind === 'score' ? [choice.uri] : []));
    const found = await Promise.all(uris.map(async (uri) => [uri, (await documents.current(uri))?.project] as const));
    const projects = new Map(found);
    return (uri) => projects.get(uri);
  };
  connection.onRequest<unknown, void>(
    'bentside/tuning',
    answer<TuningParams, FileRequests['bentside/tuning']['result']>(null, async ({ project }, params) =>
      showTuning(project, params, await others(params)),
    ),
  );
  connection.onRequest<unknown, void>(
    'bentside/writeTuning',
    answer<TuningParams, FileRequests['bentside/writeTuning']['result']>(null, async ({ project }, params) => {
      const wanted = wantedTuning(project, params, await others(params));
      if ('failure' in wanted) return null;
      const { statements, obstacle } = writingTuning(project, params.reading, wanted);
      return obstacle === ''
        ? textEdits(
            project,
            statements.map(({ change }) => change),
          )
        : null;
    }),
  );
}
