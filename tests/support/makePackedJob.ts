import { writeFileSync } from 'node:fs'
import { packed, smallJob } from './packedJob'

// Writes the job file that tests/reference/makeJobFileReference.py has other programs look into.
const { job, beside } = smallJob()
writeFileSync(process.argv[2]!, await packed(job, beside))
