/** Thread colours of the rowing club on Tarn Ellerby. */
export const LAKE = '#1f6fb2';
export const DEEP = '#17456e';
export const CHALK = '#f4f1e8';
export const ORANGE = '#e8742c';
export const REED = '#4d8b5a';
export const SLATE = '#3d4a57';
