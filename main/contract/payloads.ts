import { z } from 'zod';
import { LARGEST_EXPORT_BYTES } from '../../sim/export/file-size';
import { LARGEST_FILE_BYTES } from '../../sim/project/file-size';
import type { SpokenVerb } from './channels';

const NAME = z.string().min(1).max(255);
const TEXT = z.string().max(LARGEST_FILE_BYTES);
const PLACE = z.string().max(64);

/** More than any way of looking at things takes. */
export const LARGEST_VIEW_CHARACTERS = 10_000;

const MENU_COMMAND = z.strictObject({
  id: z.string().min(1).max(400),
  label: z.string().min(1).max(400),
  group: z.string().min(1).max(40),
  shortcut: z
    .string()
    .regex(/^(CommandOrControl\+)?(Shift\+)?([A-Z0-9]|F\d{1,2})$/)
    .nullable(),
  applies: z.boolean(),
});

/** What the pages may send to the shell with each verb. Whatever does not fit exactly is refused before anything is done with it. */
export const PAYLOADS = {
  openedAtStart: z.undefined(),
  open: z.undefined(),
  /** The path of the dropped file, as long as Windows allows. */
  openDropped: z.string().min(1).max(32_767),
  reopen: PLACE,
  changedOnDisk: PLACE,
  recent: z.undefined(),
  save: z.strictObject({
    name: NAME,
    text: TEXT,
    place: PLACE.nullable(),
    overwrite: z.boolean().default(false),
  }),
  keepRecovery: z.strictObject({ name: NAME, text: TEXT, place: PLACE.nullable() }),
  recovery: z.undefined(),
  dropRecovery: z.undefined(),
  printPdf: z.strictObject({ name: NAME, html: TEXT }),
  exportFile: z.strictObject({
    name: NAME.regex(/^[^/\\]+\.(csv|svg|png|json)$/),
    bytes: z.instanceof(Uint8Array).refine(({ length }) => length <= LARGEST_EXPORT_BYTES),
  }),
  keptView: z.undefined(),
  keepView: z.string().max(LARGEST_VIEW_CHARACTERS),
  setMenu: z.array(MENU_COMMAND).max(200),
  setProgress: z.number().min(0).max(1).nullable(),
  setEdited: z.boolean(),
} satisfies Record<SpokenVerb, z.ZodType>;

/** What came with a verb, once it was found to fit. */
export type Payload<Verb extends SpokenVerb> = z.infer<(typeof PAYLOADS)[Verb]>;
