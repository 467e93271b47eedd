import type { Job, JobPicture } from '../../../core/job/index.ts';
import type { Bench } from '../../store/bench.ts';
import type { ReadPicture } from './worker/protocol.ts';

export interface PicturePartProps {
  readonly bench: Bench;
  readonly job: Job;
  readonly picture: JobPicture;
  readonly read: ReadPicture;
}
