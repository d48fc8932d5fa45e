/** Requests that their client takes back. */
import { type CancellationToken, LSPErrorCodes, ResponseError } from 'vscode-languageserver';

/**
 * What work gives; it goes on unheeded when the client no longer wants it, for most of it is needed by the next request.
 * @throws the answer "cancelled" as soon as that is so
 */
export function unlessCancelled<Result>(work: Promise<Result>, token: CancellationToken): Promise<Result> {
  return new Promise((resolve, reject) => {
    const listener = token.onCancellationRequested(() =>
      reject(new ResponseError(LSPErrorCodes.RequestCancelled, 'cancelled')),
    );
    work.then(resolve, reject).finally(() => listener.dispose());
  });
}
