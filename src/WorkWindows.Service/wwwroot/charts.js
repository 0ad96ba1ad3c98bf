"use strict";

// Draws every chart of a page with uPlot: a place names the data it shows by data-chart.
(() => {
  const day = 86400;
  const height = 240;
  const lineHeight = 13;
  const besides = 52;
  const zoomedIn = "Zoomed in: double-click to see all again.";
  const style = name => getComputedStyle(document.documentElement).getPropertyValue(name).trim();
  const months = 28 * day;
  const years = 360 * day;
  const dated = time => new Date(time * 1000).toUTCString().slice(0, 16).replace(",", "");

  function line(u, x1, y1, x2, y2, color) {
    u.ctx.strokeStyle = u.ctx.fillStyle = color;
    u.ctx.lineWidth = devicePixelRatio;
    u.ctx.setLineDash([]);
    u.ctx.beginPath();
    u.ctx.moveTo(x1, y1);
    u.ctx.lineTo(x2, y2);
    u.ctx.stroke();
  }

  // In the plot on a ground of its own, so that it can be read over lines.
  function written(u, text, isBeside, foot) {
    const right = u.bbox.left + u.bbox.width;
    if (!isBeside) {
      const wide = u.ctx.measureText(text).width;
      u.ctx.fillStyle = style("--paper");
      u.ctx.fillRect(
        right - wide - 6 * devicePixelRatio, foot - (lineHeight - 2) * devicePixelRatio, wide + 4, lineHeight * devicePixelRatio);
    }
    u.ctx.fillStyle = style("--muted");
    u.ctx.textAlign = isBeside ? "left" : "right";
    u.ctx.fillText(text, right + (isBeside ? 4 : -4) * devicePixelRatio, foot);
  }

  // Lines across with their labels; a label that would lie on another is left out. The newest days of a chart lie at its
  // right, so that labels stand beside it there; a strip ends with days to come, and its days must lie under the others.
  function across(u, limits, isStrip) {
    const { left, top, width, height: tall } = u.bbox;
    u.ctx.font = `${12 * devicePixelRatio}px system-ui, sans-serif`;
    const room = lineHeight * devicePixelRatio;
    let above = Infinity;
    limits.forEach(limit => {
      const y = u.valToPos(limit.value, "y", true);
      if (y < top || y > top + tall) {
        return;
      }
      line(u, left, y, left + width, y, style("--muted"));
      // In a strip over the line, or under it where there is no room over it.
      const foot = !isStrip ? y + 4 * devicePixelRatio : y - top < room ? y + room : y - 4 * devicePixelRatio;
      if (above - foot >= room) {
        written(u, limit.label, !isStrip, foot);
        above = foot;
      }
    });
  }

  function marks(u, data) {
    const { left, top, width, height: tall } = u.bbox;
    u.ctx.save();
    across(u, data.limits, data.isStrip);
    u.ctx.beginPath();
    u.ctx.rect(left, top, width, tall);
    u.ctx.clip();
    data.marks.forEach(mark => {
      const x = u.valToPos((mark.day + 0.5) * day, "x", true);
      line(u, x, top, x, top + tall, style(mark.color));
    });
    data.stretches.forEach(stretch => {
      const x = u.valToPos(stretch.from * day, "x", true);
      const thick = (stretch.isStrong ? 6 : 3) * devicePixelRatio;
      u.ctx.fillStyle = style(stretch.isStrong ? "--amber" : "--muted");
      u.ctx.fillRect(x, top + tall - thick, u.valToPos((stretch.to + 1) * day, "x", true) - x, thick);
    });
    u.ctx.restore();
  }

  // As in '3 Feb', 'Feb' or '2026', as far apart as they are; a year that is new stands under it.
  function ticks(u, splits, axis, space, apart) {
    let before = "";
    return splits.map(time => {
      const [, date, month, year] = dated(time).split(" ");
      const name = apart >= years ? year : apart >= months ? month : `${Number(date)} ${month}`;
      const text = apart < years && year !== before ? `${name}\n${year}` : name;
      before = year;
      return text;
    });
  }

  const isZoomed = u => u.scales.x.min > u.data[0][0] || u.scales.x.max < u.data[0][u.data[0].length - 1];

  function values(u, data, index) {
    const when = data.step === "day" ? dated(u.data[0][index]) : `${data.step} from ${dated(u.data[0][index])}`;
    const parts = data.series.flatMap((series, i) => {
      const value = u.data[i + 1][index];
      return series.label === undefined || value === null ? [] : [`${series.label} ${Math.round(value)} ${data.unit}`];
    });
    const zoomed = !data.isStrip && isZoomed(u) ? `. ${zoomedIn}` : "";
    return `${when}: ${parts.join(", ") || "not known"}${zoomed}`;
  }

  function draw(place, data, say) {
    const axis = { stroke: style("--muted"), grid: { stroke: style("--line"), width: 1 }, ticks: { show: false } };
    const days = data.days.map(number => number * day);
    const fixed = { range: () => [days[0], days[days.length - 1] + day] };
    return new uPlot(
      {
        width: place.clientWidth,
        height,
        tzDate: time => uPlot.tzDate(new Date(time * 1000), "Etc/UTC"),
        padding: [8, data.isStrip ? 0 : data.limits.length > 0 ? besides : 20, data.isStrip ? 8 : 0, 0],
        cursor: { drag: { x: !data.isStrip, y: false }, points: { show: false } },
        legend: { show: false },
        scales: { x: data.isStrip ? fixed : {} },
        axes: [
          data.isStrip ? { show: false } : { ...axis, values: ticks },
          { ...axis, size: 40, values: (_, splits) => splits.map(tick => `${tick}${/^°[CF]$/.test(data.unit) ? "°" : ""}`) },
        ],
        series: [
          {},
          ...data.series.map(series => ({
            stroke: style(series.color),
            width: series.isHidden ? 0 : 1.5,
            dash: series.isDashed ? [4, 3] : undefined,
            points: { show: false },
          })),
        ],
        bands: data.bands.map(([upper, lower]) => ({
          series: [upper + 1, lower + 1],
          fill: `${style(data.series[upper].color)}2e`,
        })),
        hooks: {
          draw: [u => marks(u, data)],
          setCursor: [u => u.cursor.idx !== null && u.cursor.idx !== undefined && say(values(u, data, u.cursor.idx))],
          setScale: [(u, scale) => scale === "x" && !data.isStrip && isZoomed(u) && say(zoomedIn)],
        },
      },
      [days, ...data.series.map(series => series.values)],
      place,
    );
  }

  document.querySelectorAll("[data-chart]").forEach(place => {
    const data = JSON.parse(document.getElementById(place.dataset.chart).textContent);
    const readout = document.getElementById(place.dataset.readout);
    const say = text => {
      readout.textContent = text;
    };
    let chart = draw(place, data, say);
    new ResizeObserver(() => {
      if (place.clientWidth !== chart.width) {
        chart.setSize({ width: place.clientWidth, height });
      }
    }).observe(place);
    matchMedia("(prefers-color-scheme: dark)").addEventListener("change", () => {
      chart.destroy();
      chart = draw(place, data, say);
    });
  });
})();
