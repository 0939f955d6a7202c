// The public programs. They are installed beside the build, not in the tree.
import {createRequire} from 'node:module';

const from = createRequire(`${process.env.JAMBLINE_PEERS}/package.json`);
export const {Upload, DefaultHttpStack} = from('tus-js-client');
export const {Server, EVENTS} = from('@tus/server');
export const {FileStore} = from('@tus/file-store');
