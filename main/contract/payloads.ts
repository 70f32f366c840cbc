import { z } from 'zod';
import { LARGEST_EXPORT_BYTES } from '../../sim/export/file-size';
import { LARGEST_FILE_BYTES } from '../../sim/project/file-size';

const NAME = z.string().min(1).max(255);
const TEXT = z.string().max(LARGEST_FILE_BYTES);
const PLACE = z.string().max(64);

/** What the pages may send to the shell. Whatever does not fit exactly is refused before anything is done with it. */
export const SAVE_PAYLOAD = z.strictObject({
  name: NAME,
  text: TEXT,
  place: PLACE.nullable(),
  overwrite: z.boolean().default(false),
});

export const KEEP_RECOVERY_PAYLOAD = z.strictObject({ name: NAME, text: TEXT, place: PLACE.nullable() });

/** The path of a dropped file, as long as Windows allows. */
export const OPEN_DROPPED_PAYLOAD = z.string().min(1).max(32_767);

export const REOPEN_PAYLOAD = PLACE;

export const CHANGED_ON_DISK_PAYLOAD = PLACE;

export const PRINT_PDF_PAYLOAD = z.strictObject({ name: NAME, html: TEXT });

export const EXPORT_FILE_PAYLOAD = z.strictObject({
  name: NAME.regex(/^[^/\\]+\.(csv|svg|png|json)$/),
  bytes: z.instanceof(Uint8Array).refine(({ length }) => length <= LARGEST_EXPORT_BYTES),
});

/** More than any way of looking at things takes. */
export const LARGEST_VIEW_CHARACTERS = 10_000;

export const KEEP_VIEW_PAYLOAD = z.string().max(LARGEST_VIEW_CHARACTERS);

export const SET_MENU_PAYLOAD = z
  .array(
    z.strictObject({
      id: z.string().min(1).max(400),
      label: z.string().min(1).max(400),
      group: z.string().min(1).max(40),
      shortcut: z
        .string()
        .regex(/^(CommandOrControl\+)?(Shift\+)?([A-Z0-9]|F\d{1,2})$/)
        .nullable(),
      applies: z.boolean(),
    }),
  )
  .max(200);

export const SET_PROGRESS_PAYLOAD = z.number().min(0).max(1).nullable();

export const SET_EDITED_PAYLOAD = z.boolean();
