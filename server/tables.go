package server

import (
	"net/http"

	"github.com/labstack/echo/v4"

	"asfound/server/workbook"
)

const (
	maxTablesBytes = 8 << 20
	workbookType   = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet"
)

// makeWorkbook answers POST /api/tables.xlsx, {"tables":[...]}, with a workbook.
func (s *Server) makeWorkbook(c echo.Context) error {
	select {
	case s.making <- struct{}{}:
		defer func() { <-s.making }()
	default:
		p := problem(http.StatusServiceUnavailable, "busy", "other workbooks are being made: try again in a moment")
		p.wait = "2"
		return p
	}
	var in struct {
		Tables []workbook.Table `json:"tables"`
	}
	if err := s.readJSON(c.Response(), c.Request(), maxTablesBytes, &in); err != nil {
		return err
	}
	book, err := workbook.Make(in.Tables)
	if err != nil {
		return err
	}
	h := c.Response().Header()
	h.Set("Asfound", "1")
	h.Set("Cache-Control", "no-store")
	h.Set("Content-Disposition", `attachment; filename="tables.xlsx"`)
	return c.Blob(http.StatusOK, workbookType, book)
}
