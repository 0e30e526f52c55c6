import './charts/charts.ts';
