package server

import "net/http"

// routes is every address the server answers.
func (s *Server) routes() {
	e := s.echo
	e.Use(catch, setHeaders, s.checkHost)

	api := e.Group("/api", checkOrigin)
	api.POST("/sync", s.sync)
	api.GET("/photos/:hash", s.getPhoto)
	api.HEAD("/photos/:hash", s.getPhoto)
	api.PUT("/photos/:hash", s.putPhoto)
	api.GET("/photos/:hash/have", s.havePhoto)
	api.POST("/links", s.makeLink)
	api.GET("/links/:id", s.getLink)
	api.DELETE("/links/:id", s.withdrawLink)
	api.POST("/tables.xlsx", s.makeWorkbook)
	api.GET("/health", s.health)
	api.Any("", s.unknown)
	api.Any("/*", s.unknown)

	s.sellerRoutes()
	e.Match([]string{http.MethodGet, http.MethodHead}, "/robots.txt", s.robots)
	e.Match([]string{http.MethodGet, http.MethodHead}, "/*", s.site)
}
