//! The app's icon as dots: a taut tape between two stakes, and canopy over a part of it. `web/icon.svg` is the same drawing.

use crate::Done;

/// The side of the drawing's square, as in `web/icon.svg`.
const SIDE: f64 = 64.0;

const GROUND: [u8; 3] = [0x3c, 0x52, 0x29];
const CANOPY: [u8; 3] = [0xb5, 0xd1, 0x92];
const STAKE: [u8; 3] = [0x2a, 0x24, 0x1c];
const TAPE: [u8; 3] = [0xf3, 0xdc, 0x94];

/// Points on each side of a dot that are looked at.
const FINE: u32 = 4;

/// The icon in so many dots. A full one reaches the edges, for systems that cut icons into shapes of their own.
pub(crate) fn png(size: u32, full: bool) -> Done<Vec<u8>> {
    let mut bytes = Vec::new();
    let mut encoder = png::Encoder::new(&mut bytes, size, size);
    encoder.set_color(png::ColorType::Rgba);
    encoder.set_depth(png::BitDepth::Eight);
    let mut writer = encoder.write_header().map_err(|why| why.to_string())?;
    let mut dots = Vec::with_capacity(size as usize * size as usize * 4);
    for y in 0..size {
        for x in 0..size {
            dots.extend(dot(x, y, size, full));
        }
    }
    writer.write_image_data(&dots).map_err(|why| why.to_string())?;
    writer.finish().map_err(|why| why.to_string())?;
    Ok(bytes)
}

/// One dot: the mean of what lies under it.
fn dot(x: u32, y: u32, size: u32, full: bool) -> [u8; 4] {
    let (mut sum, mut covered) = ([0_u32; 3], 0);
    for fine in 0..FINE * FINE {
        let at = |dot: u32, fine: u32| (f64::from(dot * FINE + fine) + 0.5) * SIDE / f64::from(size * FINE);
        if let Some(colour) = colour(at(x, fine % FINE), at(y, fine / FINE), full) {
            sum.iter_mut().zip(colour).for_each(|(sum, part)| *sum += u32::from(part));
            covered += 1;
        }
    }
    let part = |sum: u32| u8::try_from(sum / covered.max(1)).unwrap_or(u8::MAX);
    let opaque = u8::try_from(covered * 255 / (FINE * FINE)).unwrap_or(u8::MAX);
    [part(sum[0]), part(sum[1]), part(sum[2]), opaque]
}

/// What stands at a place of the drawing, the nearest first.
fn colour(x: f64, y: f64, full: bool) -> Option<[u8; 3]> {
    let within = |left: f64, top: f64, width: f64, height: f64| {
        (left..left + width).contains(&x) && (top..top + height).contains(&y)
    };
    let round = |cx: f64, cy: f64, r: f64| (x - cx).hypot(y - cy) < r;
    let corner = |from: f64| {
        if from < 14.0 {
            14.0 - from
        } else if from > 50.0 {
            from - 50.0
        } else {
            0.0
        }
    };
    if !full && corner(x).hypot(corner(y)) > 14.0 {
        return None;
    }
    let tick =
        (0..7).any(|at| within(16.25 + f64::from(at) * 5.0, 40.0, 1.5, if at % 3 == 0 { 5.0 } else { 3.0 }));
    Some(if within(9.0, 30.0, 4.0, 22.0) || within(51.0, 30.0, 4.0, 22.0) || tick {
        STAKE
    } else if within(11.0, 38.0, 42.0, 9.0) {
        TAPE
    } else if y < 38.0 && (round(26.0, 30.0, 9.0) || round(36.0, 25.0, 10.0) || round(43.0, 32.0, 7.0)) {
        CANOPY
    } else {
        GROUND
    })
}

#[cfg(test)]
mod tests {
    use super::{GROUND, TAPE, colour};

    #[test]
    fn a_full_icon_has_no_free_corner() {
        assert_eq!(colour(0.5, 0.5, false), None);
        assert_eq!(colour(0.5, 0.5, true), Some(GROUND));
        assert_eq!(colour(32.0, 46.0, false), Some(TAPE));
    }
}
