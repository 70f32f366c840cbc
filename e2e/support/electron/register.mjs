/** Loaded before the built shell (`node --import`): gives it our stand-in when it asks for the module `electron`. */
import { register } from 'node:module';

register('./resolve.mjs', import.meta.url);
