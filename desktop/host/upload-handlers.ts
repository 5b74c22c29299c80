import type { Handlers } from './handlers.ts';
import type { AskImporter } from './import-messages.ts';
import { refusal } from './replies.ts';
import type { Uploads } from './uploads.ts';

type UploadHandlers = Pick<Handlers, 'beginUpload' | 'uploadPiece' | 'dropUpload' | 'uploadHead'>;

/** Answers what is asked of a file on its way from a screen. */
export function uploadHandlers(uploads: Uploads, ask: AskImporter): UploadHandlers {
  return {
    async beginUpload({ bytes }) {
      const upload = await uploads.begin(bytes);
      return { ok: true, result: { upload } };
    },
    async uploadPiece({ upload, at, base64 }) {
      const received = await uploads.add(upload, at, Buffer.from(base64, 'base64'));
      if (typeof received === 'number') return { ok: true, result: { received } };
      return refusal('error', `The file was not taken: ${received}.`);
    },
    dropUpload: async ({ upload }) => ({ ok: true, result: await uploads.drop(upload) }),
    async uploadHead({ upload, form }) {
      const path = uploads.path(upload);
      if (path === undefined) return uploadGone;
      const answer = await ask({ kind: 'head', path, form });
      return answer.ok ? { ok: true, result: answer.head } : refusal('error', answer.faults.join('; '));
    },
  };
}

export const uploadGone = refusal('error', 'The file is not here any more, or not wholly. Choose it again.');
