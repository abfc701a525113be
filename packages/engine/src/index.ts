export type { Complaint, Span } from './cabinet/complaint.ts';
export { formatComplaint } from './cabinet/complaint.ts';
export { nearest } from './cabinet/nearest.ts';
