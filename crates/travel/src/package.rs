//! Tidy delimited text, and beside it what each column holds: a Data Package.
//!
//! # Source
//! Frictionless Data, Data Package and Table Schema, version 1 (specs.frictionlessdata.io, 2017, updated 2021)

use crate::table::{Cell, Holds, Table};
use crate::{File, Whole, tables};
use serde_json::{Map, Value, json};
use tautline_exchange::table::row;
use tautline_survey::input::Input;
use tautline_words::Words;

/// Every table as a file, and their description. Tables without rows are among them: that nothing is there is said too.
pub fn files(whole: &Whole, words: &Words) -> Vec<File> {
    let tables = tables::all(whole);
    let mut files: Vec<File> =
        tables.iter().map(|table| File::text(&format!("{}.csv", table.name), text(table))).collect();
    let resources: Vec<Value> = tables.iter().map(|table| resource(table, words)).collect();
    let mut package = json!({
        "profile": "tabular-data-package",
        "name": "tautline-readings",
        "title": words.word("package-title"),
        "description": words.word("package-description"),
        "sources": sources(whole.input),
        "resources": resources,
    });
    if let Some(name) = whole.publisher {
        package["contributors"] = json!([{ "title": name, "role": "publisher" }]);
    }
    files.push(File::text("datapackage.json", format!("{package:#}\n")));
    files
}

/// The files that were read, by name and hash. Folders in front of a name are a person's own and stay at home.
fn sources(input: &Input) -> Value {
    let source = |file: &tautline_survey::input::SourceFile| {
        let name = file.name.rsplit(['/', '\\']).next().unwrap_or_default();
        json!({ "title": format!("{name} sha256:{}", file.sha256) })
    };
    input.files.iter().map(source).collect()
}

/// A table as text. A cell that a spreadsheet would work out has an apostrophe in front.
pub(crate) fn text(table: &Table) -> String {
    let heads: Vec<&str> = table.columns.iter().map(|column| column.name).collect();
    let rows = table.rows.iter().map(|cells| row(&cells.iter().map(Cell::written).collect::<Vec<_>>()));
    row(&heads) + &rows.collect::<String>()
}

fn resource(table: &Table, words: &Words) -> Value {
    let links: Vec<Value> = table.links.iter().map(link).collect();
    let mut schema =
        json!({ "fields": fields(table, words), "primaryKey": table.key, "missingValues": [""] });
    if !links.is_empty() {
        schema["foreignKeys"] = Value::Array(links);
    }
    json!({
        "profile": "tabular-data-resource",
        "name": table.name.replace('_', "-"),
        "title": words.word(&table.words()),
        "path": format!("{}.csv", table.name),
        "format": "csv",
        "mediatype": "text/csv",
        "encoding": "utf-8",
        "schema": schema,
    })
}

fn link(link: &crate::table::Link) -> Value {
    let reference = json!({ "resource": link.table.replace('_', "-"), "fields": link.there });
    json!({ "fields": link.columns, "reference": reference })
}

fn fields(table: &Table, words: &Words) -> Vec<Value> {
    let field = |column: &crate::table::Column| {
        let mut rules = Map::new();
        if column.needed {
            rules.insert("required".to_owned(), Value::Bool(true));
        }
        if table.key == [column.name] {
            rules.insert("unique".to_owned(), Value::Bool(true));
        }
        let kind = match column.holds {
            Holds::Text => "string",
            Holds::OneOf(these) => {
                rules.insert("enum".to_owned(), json!(these));
                "string"
            }
            Holds::Whole => "integer",
            Holds::Number => "number",
            Holds::Amount => {
                rules.insert("minimum".to_owned(), json!(0));
                "number"
            }
            Holds::Day => "date",
            Holds::Yes => "boolean",
        };
        let mut field = json!({
            "name": column.name,
            "type": kind,
            "description": words.word(&column.words()),
        });
        if let Some(unit) = column.unit {
            field["unit"] = Value::String(unit.to_owned());
        }
        if column.holds == Holds::Yes {
            field["trueValues"] = json!(["true"]);
            field["falseValues"] = json!(["false"]);
        }
        if !rules.is_empty() {
            field["constraints"] = Value::Object(rules);
        }
        field
    };
    table.columns.iter().map(field).collect()
}
