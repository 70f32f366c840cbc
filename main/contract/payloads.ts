import { z } from 'zod';
import { LARGEST_FILE_BYTES } from '../../sim/project/file-size';

/** What the pages may send to the shell. Whatever does not fit exactly is refused before anything is done with it. */
export const SAVE_PAYLOAD = z.strictObject({
  name: z.string().min(1).max(255),
  text: z.string().max(LARGEST_FILE_BYTES),
  place: z.string().max(64).nullable(),
});

export const SET_EDITED_PAYLOAD = z.boolean();
