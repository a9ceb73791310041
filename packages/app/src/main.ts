import './view/workbench.js';
