import { readJob, readJobFile, writeJobFile } from '../../../core/job/index.ts';
import type { Work } from './room.ts';

export const openJobAnswer: Work<'openJob'> = async (ask) => {
  const { job, attachments } = 'file' in ask ? readJobFile(ask.file, ask.name) : readJob(ask.files);
  return { answer: { job, attachments }, transfer: [] };
};

export const saveJobAnswer: Work<'saveJob'> = async (ask) => {
  const bytes = writeJobFile(ask);
  return { answer: bytes, transfer: [bytes.buffer as ArrayBuffer] };
};
