export { rigViews } from './rig-views.ts';
export { rigViewHandles } from './view-handles.ts';
